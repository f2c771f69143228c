import react from "@vitejs/plugin-react";
import { VitePWA } from "vite-plugin-pwa";
import { defineConfig } from "vitest/config";
import manifest from "./package.json" with { type: "json" };

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

export default defineConfig({
  // The built page works from any folder of a web server.
  base: "./",
  publicDir: "shared/icons",
  plugins: [
    react(),
    VitePWA({
      // A new version waits until it is asked for: nothing reloads during an attempt.
      registerType: "prompt",
      manifest: MANIFEST,
      workbox: { globPatterns: ["**/*.{js,css,html,woff2,png}"], cleanupOutdatedCaches: true },
    }),
  ],
  // Stands on every record.
  define: { "import.meta.env.APP_VERSION": JSON.stringify(manifest.version) },
  build: { target: "es2023", chunkSizeWarningLimit: 700 },
  server: { host: "127.0.0.1" },
  preview: { host: "127.0.0.1", port: 4173 },
  test: {
    include: ["tests/**/*.test.{ts,tsx}"],
    exclude: ["tests/browser/**"],
    setupFiles: ["tests/support/fixedSeed.ts"],
    // A busy machine is slow, not wrong.
    testTimeout: 60_000,
    // By itself it leaves a processor idle, on two of them half the machine.
    maxWorkers: "100%",
    // Files share what they import, and must leave nothing behind. Half the time was spent on importing it anew.
    isolate: false,
    restoreMocks: true,
  },
});
