import { defineConfig } from 'astro/config';
import { siteAddress } from './src/commands/site-address.ts';

const { site, base } = siteAddress(process.env);

export default defineConfig({
  site,
  base,
  output: 'static',
  trailingSlash: 'always',
  outDir: process.env.PEG_ATLAS_OUT ?? './dist',
  compressHTML: true,
  build: { format: 'directory', inlineStylesheets: 'always' },
  devToolbar: { enabled: false },
  security: { csp: true },
  vite: { build: { assetsInlineLimit: 0 } },
});
