/** The judge of our distributions ships no types; these are the parts the tests call. */
declare module "jstat" {
  interface Judge {
    readonly normal: {
      cdf(x: number, mean: number, std: number): number;
      inv(p: number, mean: number, std: number): number;
    };
    readonly studentt: {
      pdf(x: number, dof: number): number;
      cdf(x: number, dof: number): number;
      inv(p: number, dof: number): number;
    };
    readonly centralF: { cdf(x: number, df1: number, df2: number): number };
    readonly chisquare: { cdf(x: number, dof: number): number; inv(p: number, dof: number): number };
    readonly beta: { inv(p: number, alpha: number, beta: number): number };
    readonly binomial: { cdf(k: number, n: number, p: number): number };
    readonly gamma: {
      pdf(x: number, shape: number, scale: number): number;
      cdf(x: number, shape: number, scale: number): number;
    };
    mean(values: number[]): number;
    stdev(values: number[], isSample: boolean): number;
    anovafscore(...groups: number[][]): number;
  }
  const judge: Judge;
  export = judge;
}
