import tailwind from "@tailwindcss/vite";
import react from "@vitejs/plugin-react";
import type { Plugin } from "vite";
import { VitePWA } from "vite-plugin-pwa";
import { defineConfig } from "vitest/config";
import manifest from "./package.json" with { type: "json" };
import { controlsUnderPolicy, englishOnly } from "./src/bundle/accessibleControls.ts";
import { chanceWithoutLeaps } from "./src/bundle/chanceWithoutLeaps.ts";
import { PAGE_POLICY, SECURITY_HEADERS } from "./src/bundle/contentPolicy.ts";
import { fewChunks } from "./src/bundle/fewChunks.ts";
import { figuresAlone } from "./src/bundle/figuresAlone.ts";
import { firstPicture } from "./src/bundle/firstPicture.ts";
import { servedBuild } from "./src/bundle/servedBuild.ts";

/** What a phone or a desk keeps of the app when it is installed. */
const MANIFEST = {
  name: "Gatefall",
  short_name: "Gatefall",
  description: "Practice dialing combination locks, and see why a lock did or did not open.",
  start_url: ".",
  display: "standalone" as const,
  background_color: "#f3f0e8",
  theme_color: "#f3f0e8",
  icons: [192, 512].map((size) => ({ src: `icon-${size}.png`, sizes: `${size}x${size}`, type: "image/png" })),
};

/** Writes the policy into the head of the built page, ahead of all that it governs. While one works, Vite needs inline scripts. */
const contentPolicy: Plugin = {
  name: "content-policy",
  apply: "build",
  transformIndexHtml: () => [
    {
      tag: "meta",
      attrs: { "http-equiv": "Content-Security-Policy", content: PAGE_POLICY },
      injectTo: "head-prepend",
    },
  ],
};

/** A library asks by trial whether the browser has generators, from text, which the policy refuses and counts as a breach. */
const noTrialOfEval: Plugin = {
  name: "no-trial-of-eval",
  load: (id) => (/@stdlib\/assert-has-generator-support\/.*\.js$/.test(id) ? "module.exports = () => true;" : null),
};

export default defineConfig({
  // The built page works from any folder of a web server.
  base: "./",
  publicDir: "shared/public",
  plugins: [
    react(),
    tailwind(),
    contentPolicy,
    firstPicture(),
    noTrialOfEval,
    chanceWithoutLeaps,
    figuresAlone,
    controlsUnderPolicy,
    englishOnly,
    servedBuild(SECURITY_HEADERS),
    VitePWA({
      // A new version waits until it is asked for: nothing reloads during an attempt.
      registerType: "prompt",
      manifest: MANIFEST,
      workbox: {
        globPatterns: ["**/*.{js,css,html,woff2,png,svg}"],
        cleanupOutdatedCaches: true,
        // In one file: fetching its parts would need a script address, which the policy refuses a worker.
        inlineWorkboxRuntime: true,
        // What a class server answers is never the page.
        navigateFallbackDenylist: [/^\/api\//],
      },
    }),
  ],
  // React has had this hook itself since version 18: what stood in for it before is left out.
  resolve: {
    alias: [
      { find: "use-sync-external-store/shim/with-selector", replacement: "use-sync-external-store/with-selector" },
      { find: /^use-sync-external-store\/shim(\/index\.js)?$/, replacement: "react" },
    ],
  },
  // Stands on every record.
  define: {
    "import.meta.env.APP_VERSION": JSON.stringify(manifest.version),
    // Zod asks by trial whether it may make code from text. The policy refuses, and counts the trial as a breach.
    "globalThis.__zod_globalConfig": JSON.stringify({ jitless: true }),
  },
  worker: { plugins: () => [noTrialOfEval, chanceWithoutLeaps] },
  build: {
    target: "es2023",
    chunkSizeWarningLimit: 700,
    // Every browser of the target preloads modules by itself.
    modulePreload: { polyfill: false },
    // The first screen's script names every file that may come: a letter less of each leaves it room.
    // Whoever starts it wants to see where it is served, not what took the bundler its time.
    rolldownOptions: {
      output: { codeSplitting: fewChunks(), chunkFileNames: "assets/[name]-[hash:7].js" },
      checks: { bundlerTimings: false },
    },
  },
  server: { host: "127.0.0.1" },
  preview: { host: "127.0.0.1", port: 4173, headers: { ...SECURITY_HEADERS } },
  test: {
    include: ["tests/**/*.test.{ts,tsx}"],
    exclude: ["tests/browser/**"],
    setupFiles: ["tests/support/fixedSeed.ts"],
    globalSetup: ["tests/server/support/runDatabases.ts"],
    // A busy machine is slow, not wrong.
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // By itself it leaves a processor idle, on two of them half the machine.
    maxWorkers: "100%",
    // Files share what they import, and must leave nothing behind. Half the time was spent on importing it anew.
    isolate: false,
    restoreMocks: true,
  },
});
