// How does web/ become web/built/?  The same bytes on every machine: fixed names, no dates, no paths.
import { readdirSync, readFileSync } from "node:fs";
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
        ...["light", "dark", "contrast", "print"].map((ground) => `:root[data-ground="${ground}"]{color-scheme:${ground === "light" || ground === "print" ? "light" : "dark"};${rows(ground)}}`),
        `@media print{:root[data-ground]{color-scheme:light;${rows("print")}}}`,
      ].join("\n");
    },
  };
}

/** The licences of the packages whose code is in the page, as their authors ask. */
function licences(): Plugin {
  return {
    name: "licences",
    generateBundle(_, bundle) {
      const folders = new Set<string>();
      for (const one of Object.values(bundle))
        for (const id of one.type === "chunk" ? one.moduleIds : []) {
          const found = /^(?:\0)?(.*\/node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(id);
          if (found?.[1] !== undefined) folders.add(found[1]);
        }
      const texts = [...folders].map((folder) => {
        const about = JSON.parse(readFileSync(`${folder}/package.json`, "utf8")) as { name: string; version: string; license: string };
        const file = readdirSync(folder).find((name) => /^licen[cs]e/i.test(name));
        if (file === undefined) throw new Error(`${about.name} has no licence text`);
        return `${about.name} ${about.version}, ${about.license}\n\n${readFileSync(`${folder}/${file}`, "utf8").trim()}\n`;
      });
      this.emitFile({ type: "asset", fileName: "licences.txt", source: texts.sort().join("\n----------\n\n") });
    },
  };
}

export default defineConfig({
  root: ".",
  base: "/",
  publicDir: false,
  plugins: [look(), licences()],
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
