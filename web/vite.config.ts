// How does web/ become web/built/?  The same bytes on every machine: fixed names, no dates, no paths.
import { readFileSync } from "node:fs";
import { defineConfig, type Plugin } from "vite";

interface Look {
  colour: Record<string, Record<string, string>>;
  pen: { "screen-px": Record<string, number>; "contrast-scale": number };
}

/** The colours and pens of data/look.json as variables of the page; no other place states one. */
function look(): Plugin {
  const id = "virtual:look.css";
  return {
    name: "look",
    resolveId: (name) => (name === id ? `\0${id}` : null),
    load(name) {
      if (name !== `\0${id}`) return null;
      const all = JSON.parse(readFileSync("../data/look.json", "utf8")) as Look;
      const rows = (ground: string): string => {
        const scale = ground === "contrast" ? all.pen["contrast-scale"] : 1;
        const colours = Object.entries(all.colour[ground] ?? {}).map(([key, value]) => `--${key}:${value}`);
        const pens = Object.entries(all.pen["screen-px"]).map(([key, value]) => `--${key}:${(value * scale).toFixed(2)}px`);
        return [...colours, ...pens].join(";");
      };
      return [
        ...["light", "dark", "contrast"].map((ground) => `:root[data-ground="${ground}"]{color-scheme:${ground === "light" ? "light" : "dark"};${rows(ground)}}`),
        `@media print{:root[data-ground]{color-scheme:light;${rows("print")}}}`,
      ].join("\n");
    },
  };
}

export default defineConfig({
  root: ".",
  base: "/",
  publicDir: false,
  plugins: [look()],
  esbuild: { jsx: "automatic", jsxImportSource: "preact", legalComments: "none" },
  build: {
    outDir: "built",
    assetsDir: "",
    emptyOutDir: true,
    target: "es2021",
    assetsInlineLimit: 0,
    sourcemap: false,
    modulePreload: false,
    cssCodeSplit: false,
    rollupOptions: {
      external: [/\.otf$/],
      output: {
        entryFileNames: "page.js",
        chunkFileNames: "[name].js",
        assetFileNames: "[name][extname]",
      },
    },
  },
});
