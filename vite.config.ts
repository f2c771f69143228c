import react from "@vitejs/plugin-react";
import { defineConfig } from "vitest/config";

export default defineConfig({
  // The built page works from any folder of a web server.
  base: "./",
  plugins: [react()],
  build: { target: "es2023", chunkSizeWarningLimit: 700 },
  server: { host: "127.0.0.1" },
  preview: { host: "127.0.0.1", port: 4173 },
  test: {
    include: ["tests/**/*.test.{ts,tsx}"],
    exclude: ["tests/browser/**"],
    // A busy machine is slow, not wrong.
    testTimeout: 60_000,
  },
});
