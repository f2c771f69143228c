import { createHash } from "node:crypto";
import { build, createServer, type HtmlTagDescriptor, type Plugin, type Rolldown } from "vite";
import { chanceWithoutLeaps } from "./chanceWithoutLeaps.ts";

const MARK = "<!--first-picture-->";
/** How the build asks for the app. The style sheet and the typeface are for the first picture, and go before it. */
const APP = '<script type="module" crossorigin';

/** Makes a script that runs before anything is drawn: in one piece, as a page waits for it. */
async function scriptOf(entry: string): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: "silent",
    publicDir: false,
    plugins: [chanceWithoutLeaps],
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

type Chunks = Readonly<Record<string, Rolldown.OutputChunk | Rolldown.OutputAsset>>;

/** A file and all that it imports. */
function withImports(file: string, chunks: Chunks, found = new Set<string>()): Set<string> {
  if (found.has(file)) return found;
  found.add(file);
  const chunk = chunks[file];
  if (chunk?.type === "chunk") for (const next of chunk.imports) withImports(next, chunks, found);
  return found;
}

/** Pages that come in so few files are told in the page itself, so that they are asked for beside those of the first page. */
const MOST_FILES = 8;

/** For each page that is fetched by itself, a tag with the files that it needs. */
function filesOfPages(chunks: Chunks): HtmlTagDescriptor[] {
  const parts = Object.values(chunks).filter((one) => one.type === "chunk");
  const first = withImports(parts.find(({ isEntry }) => isEntry)?.fileName ?? "", chunks);
  return parts.flatMap(({ fileName, facadeModuleId }) => {
    const [, page] = /\/(\w+)Screen\.tsx$/.exec(facadeModuleId ?? "") ?? [];
    const files = [...withImports(fileName, chunks)].filter((file) => !first.has(file));
    if (page === undefined || files.length > MOST_FILES) return [];
    return {
      tag: "meta",
      attrs: { name: `files-of-${page.toLowerCase()}`, content: files.join(" ") },
      injectTo: "head",
    };
  });
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
    transformIndexHtml: {
      order: "post",
      handler: async (html, { bundle = {} }) => {
        if (!html.includes(MARK)) throw new Error("the page has no place for its first picture");
        if (!html.includes(APP)) throw new Error("the page asks for the app in another way");
        const picture = await markup();
        return {
          html: html.replace(MARK, () => picture).replace(APP, `${APP} fetchpriority="low"`),
          tags: [...filesOfPages(bundle), { tag: "script", attrs: { src: `./${script}` }, injectTo: "head" }],
        };
      },
    },
  };
}
