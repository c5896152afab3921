// How does web/ become web/built/?  The same bytes on every machine: fixed names, no dates, no paths.
import { defineConfig } from "vite";

export default defineConfig({
  root: ".",
  base: "/",
  publicDir: false,
  esbuild: { jsx: "automatic", jsxImportSource: "preact", legalComments: "none" },
  build: {
    outDir: "built",
    assetsDir: "",
    emptyOutDir: true,
    target: "es2021",
    sourcemap: false,
    modulePreload: false,
    cssCodeSplit: false,
    rollupOptions: {
      output: {
        entryFileNames: "page.js",
        chunkFileNames: "[name].js",
        assetFileNames: "[name][extname]",
      },
    },
  },
});
