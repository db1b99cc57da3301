/** Where records stand; a file elsewhere may be the club's own. */
const RECORD_FOLDERS: Readonly<Record<string, readonly string[]>> = {
  waters: ['.md', '.geojson'],
  pegs: ['.md'],
  notices: ['.md'],
  rounds: ['.csv'],
  sessions: ['.csv'],
  soundings: ['.csv'],
  gauge: ['.csv'],
};

/** Endings an editor, a map program or a spreadsheet gives of itself, and the one a record has. */
const TAKEN_FOR: Readonly<Record<string, string>> = {
  '.markdown': '.md',
  '.mdown': '.md',
  '.txt': '.md',
  '.json': '.geojson',
  '.geojsonl': '.geojson',
  '.tsv': '.csv',
  '.xls': '.csv',
  '.xlsx': '.csv',
  '.ods': '.csv',
};

/**
 * The path a file was most likely meant to have, where it looks like a record but would not be read: `23.md.txt`, `23.MD`,
 * a map saved as `.json`, a log kept as a spreadsheet. Null for every other file.
 * @param path inside the folder; it does not end in `.md`, `.csv` or `.geojson`
 */
export function meantRecord(path: string): string | null {
  const folder = path.includes('/') ? path.slice(0, path.indexOf('/')) : '';
  const endings = folder === '' ? (/^venue\./i.test(path) ? ['.md'] : []) : (RECORD_FOLDERS[folder] ?? []);
  // A second ending behind the right one, or the right one in capitals.
  for (const ending of endings) {
    const at = path.toLowerCase().lastIndexOf(ending);
    const rest = path.slice(at + ending.length);
    if (at > 0 && (rest === '' || /^\.(?:txt|json|csv|text|download)$/i.test(rest))) return path.slice(0, at) + ending;
  }
  const own = /\.[^./]+$/.exec(path)?.[0] ?? '';
  const meant = TAKEN_FOR[own.toLowerCase()];
  return meant !== undefined && endings.includes(meant) ? path.slice(0, -own.length) + meant : null;
}
