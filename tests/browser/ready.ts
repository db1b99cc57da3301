import { openBrowser } from './chromium.ts';

/** Says by its exit code whether the browser opens on this machine. */
const browser = await openBrowser();
await browser.close();
