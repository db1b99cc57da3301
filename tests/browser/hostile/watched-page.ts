import type { BrowserContext, Page } from 'playwright-core';

/** Everything that a page did which no page of a guide does. */
export interface Watched {
  readonly page: Page;
  /** In words; empty where all is well. */
  readonly trouble: string[];
}

/** Opens a page in which nothing that text could set off goes unseen: dialogs, requests elsewhere, windows, navigations. */
export async function watchedPage(context: BrowserContext, siteUrl: string): Promise<Watched> {
  const trouble: string[] = [];
  const page = await context.newPage();
  const { origin } = new URL(siteUrl);
  page.on('dialog', (dialog) => {
    trouble.push(`a dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  page.on('popup', (popup) => trouble.push(`a window: ${popup.url()}`));
  page.on('pageerror', (error) => trouble.push(`an error: ${error.message}`));
  page.on('request', (request) => {
    const url = request.url();
    if (!/^(?:blob|data):/.test(url) && new URL(url).origin !== origin) trouble.push(`a request: ${url}`);
  });
  page.on('console', (message) => {
    if (/content security policy/i.test(message.text())) trouble.push(`held back by the policy: ${message.text()}`);
  });
  await page.route(
    (url) => url.origin !== origin && url.protocol.startsWith('http'),
    (route) => route.abort(),
  );
  return { page, trouble };
}

/** What of a page's elements text must have made, since no page of a guide holds it. */
export function strangeElements(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const strange: string[] = [];
    for (const element of document.querySelectorAll('*')) {
      const name = element.localName;
      const tell = (what: string) => strange.push(`<${name}> ${what}`);
      if (['iframe', 'object', 'embed', 'base', 'math', 'video', 'foreignobject'].includes(name)) tell('stands there');
      if (name === 'script' && !element.hasAttribute('src') && element.getAttribute('type') !== 'application/json')
        tell('has text');
      if (name === 'meta' && element.getAttribute('http-equiv') === 'refresh') tell('refreshes');
      for (const { name: attribute, value } of element.attributes) {
        if (/^on/.test(attribute) || attribute === 'srcdoc' || attribute === 'autofocus') tell(`has ${attribute}`);
        const leads = ['href', 'src', 'action', 'data', 'formaction', 'xlink:href', 'srcset'].includes(attribute);
        if (leads && /^\s*(?:javascript|vbscript|data):/i.test(value)) tell(`leads to ${value}`);
        if (leads && name !== 'a' && /evil\.example/.test(value)) tell(`loads ${value}`);
      }
      if (name === 'style' && /evil/.test(element.textContent)) tell('is foreign');
    }
    return strange;
  });
}
