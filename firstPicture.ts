import { createHash } from "node:crypto";
import { build, createServer, type Plugin } from "vite";

const MARK = "<!--first-picture-->";

/** Makes a script that runs before anything is drawn: in one piece, as a page waits for it. */
async function scriptOf(entry: string): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: "silent",
    publicDir: false,
    build: { write: false, target: "es2023", lib: { entry, formats: ["iife"], name: "beforeDrawing" } },
  });
  const [result] = [built].flat();
  const chunk = result !== undefined && "output" in result ? result.output[0] : undefined;
  if (chunk === undefined) throw new Error(`${entry} made no script`);
  return chunk.code;
}

/** The picture as the app draws it. @throws where the content policy would refuse it */
async function markup(): Promise<string> {
  const server = await createServer({
    configFile: false,
    logLevel: "error",
    appType: "custom",
    server: { middlewareMode: true, ws: false, watch: null },
    optimizeDeps: { noDiscovery: true },
  });
  try {
    const { firstPicture } = await server.ssrLoadModule("/src/app/shell/firstPicture.tsx");
    const picture: string = firstPicture();
    if (/ style=/.test(picture)) throw new Error("the content policy refuses styles written into a page");
    return picture;
  } finally {
    await server.close();
  }
}

/**
 * Writes the first picture into the built page, drawn by the app's own code, with the script that says what of it may be
 * seen. Neither needs an exception of the content policy.
 */
export function firstPicture(): Plugin {
  let script = "";
  return {
    name: "first-picture",
    apply: "build",
    async buildStart() {
      const source = await scriptOf("src/app/shell/beforeDrawing.ts");
      const mark = createHash("sha256").update(source).digest("base64url").slice(0, 8);
      script = `assets/beforeDrawing-${mark}.js`;
      this.emitFile({ type: "asset", fileName: script, source });
    },
    async transformIndexHtml(html) {
      if (!html.includes(MARK)) throw new Error("the page has no place for its first picture");
      const picture = await markup();
      return {
        html: html.replace(MARK, () => picture),
        tags: [{ tag: "script", attrs: { src: `./${script}` }, injectTo: "head" }],
      };
    },
  };
}
