/** Whether the reader asked the browser to save data (Network Information API, of which TypeScript knows nothing). */
export function savesData(browser: object = navigator): boolean {
  return (browser as { readonly connection?: { readonly saveData?: boolean } }).connection?.saveData === true;
}
