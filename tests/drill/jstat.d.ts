/** The parts of jstat that judge our own statistics; the package brings no types. */
declare module "jstat" {
  const jstat: {
    readonly normal: { cdf(x: number, mean: number, spread: number): number };
    readonly chisquare: { inv(probability: number, freedom: number): number };
  };
  // biome-ignore lint/style/noDefaultExport: jstat is a CommonJS package, its exports are its default here.
  export default jstat;
}
