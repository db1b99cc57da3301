/** A page of the guide as it is built. */
interface BuiltPage {
  /** Its address as links of the guide write it: `/guide/kiln-pool/23/`. */
  readonly href: string;
  readonly html: string;
}

/**
 * Runs in the browser, for its parser, on the booklet's own page: puts the pages of the guide between contents and index, as one
 * document that needs nothing else. Each part keeps its own style, scoped to it; its names get the part's before them; links
 * to what is in the booklet stay inside it; a sheet is a heading below its water's.
 * @returns the booklet's HTML
 */
export function assembleBooklet([pages, printStyles, foot]: readonly [readonly BuiltPage[], string, string]): string {
  const ids = new Map(pages.map(({ href }, index) => [href, `part-${index + 1}`]));
  const scopes = new Map<string, string>();
  const index = document.querySelector('.booklet-index');

  const rename = (part: Element, style: string) => {
    const { id } = part;
    // What the styles point at is alike in all parts.
    const ofStyle = new Set([...style.matchAll(/url\("?#([\w-]+)"?\)/g)].map(([, name]) => name));
    for (const element of part.querySelectorAll('*')) {
      if (element.id !== '' && !ofStyle.has(element.id)) element.id = `${id}-${element.id}`;
      for (const { name, value } of [...element.attributes]) {
        if (/^aria-(?:labelledby|describedby|controls|owns)$|^for$|^headers$/.test(name)) {
          element.setAttribute(
            name,
            value.replace(/\S+/g, (word) => `${id}-${word}`),
          );
        } else if (value.includes('url(#')) {
          element.setAttribute(
            name,
            value.replace(/url\(#([\w-]+)\)/g, (all, place) => (ofStyle.has(place) ? all : `url(#${id}-${place})`)),
          );
        } else if (name === 'href' && value.startsWith('#')) {
          element.setAttribute(name, `#${id}-${value.slice(1)}`);
        }
      }
    }
  };

  for (const { href, html } of pages) {
    const page = new DOMParser().parseFromString(html, 'text/html');
    const main = page.querySelector('main')!;
    const isSheet = main.querySelector('.sheet') !== null;
    const style = [...page.querySelectorAll('head style')].map(({ textContent }) => textContent).join('\n');
    const scope = scopes.get(style) ?? `styled-${scopes.size + 1}`;
    scopes.set(style, scope);
    const part = document.createElement('section');
    part.className = `booklet-part ${scope}`;
    part.id = ids.get(href)!;
    const body = part.appendChild(document.createElement('div'));
    const own = body.appendChild(document.createElement('div'));
    own.className = 'booklet-main';
    own.append(...main.childNodes);
    const emergency = page.querySelector('.emergency');
    if (isSheet && emergency !== null) {
      body.className = 'booklet-sheet';
      body.append(emergency);
      for (const heading of part.querySelectorAll('h1, h2, h3, h4')) {
        heading.setAttribute('aria-level', `${Number(heading.tagName[1]) + 1}`);
      }
    }
    for (const unprinted of part.querySelectorAll('script, form, .screen-only, [data-standing]')) unprinted.remove();
    for (const folded of part.querySelectorAll('details')) folded.open = true;
    for (const picture of part.querySelectorAll('img')) picture.loading = 'eager';
    rename(part, style);
    index?.before(part);
  }

  for (const link of document.querySelectorAll('main a[href]')) {
    const { pathname, hash, origin } = new URL(link.getAttribute('href')!, document.baseURI);
    const part = origin === location.origin ? ids.get(pathname) : undefined;
    if (part === undefined) continue;
    const place = `${part}-${decodeURIComponent(hash.slice(1))}`;
    link.setAttribute('href', `#${document.getElementById(place) === null ? part : place}`);
  }
  for (const place of document.querySelectorAll<HTMLElement>('[data-page-of]')) {
    place.dataset.page = ids.get(place.dataset.pageOf!) ?? place.dataset.pageOf!.replace(/^#/, '');
  }
  document.querySelector('.booklet-cover')?.append(document.querySelector('footer .emergency')!);
  for (const around of document.querySelectorAll(
    'meta[http-equiv], script, body > :not(main, link), main > .screen-only',
  )) {
    around.remove();
  }
  const styles = document.head.appendChild(document.createElement('style'));
  const quoted = foot.replace(/[^\w ,.:]/gu, (letter) => `\\${letter.codePointAt(0)!.toString(16)} `);
  styles.textContent = [
    ...[...scopes].map(([style, scope]) => `@scope (.${scope}) {\n${style}\n${printStyles}\n}`),
    `@page { @bottom-left { content: "${quoted}"; } @bottom-right { content: counter(page); } }`,
  ].join('\n');
  return `<!doctype html>\n${document.documentElement.outerHTML}`;
}
