import { defineConfig } from 'astro/config';
import { siteAddress } from './src/commands/site-address.ts';
import { siteConfig } from './src/commands/site-config.ts';

/** For Astro's own commands; a build of a guide takes the same from `src/commands/site-config.ts`. */
export default defineConfig(siteConfig(siteAddress(process.env)));
