/** One address of every kind of page in the demo guide, below its root. */
export const PAGE_KINDS: Readonly<Record<string, string>> = {
  home: '',
  water: 'kiln-pool/',
  'peg sheet': 'kiln-pool/1/',
  features: 'features/',
  'features of a bag part': 'features/silvers/',
  notices: 'notices/',
  safety: 'safety/',
  rules: 'rules/',
  workings: 'workings/',
  'hazard register': 'register/',
  'checks due': 'due/',
  'clearance history': 'due/clearance/kiln-pool/',
  'round sheet': 'due/round-sheet/kiln-pool/',
  'bank round': 'bank-round/',
  'bank round of a water': 'bank-round/kiln-pool/',
  'not found': '404.html',
};
