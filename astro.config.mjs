import { defineConfig } from 'astro/config';
import { pegAtlas } from './src/integration.ts';

/** For Astro's own commands; `venue build` extends Astro with the same and puts the whole guide in place at once. */
export default defineConfig({ integrations: [pegAtlas()] });
