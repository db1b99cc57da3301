/** Where a safety text was read, and how far to trust it. */
export interface SafetySource {
  readonly source: string;
  /** `seen` was read on the page named, `second-hand` on a page that quotes it, `memory` is recalled. */
  readonly basis: 'seen' | 'second-hand' | 'memory' | 'none';
}

/** Every source a safety text names, by a short word. `practice` is the trade's or first aid's common practice. */
export const SAFETY_SOURCES = {
  practice: { source: 'common practice, no source', basis: 'none' },
  'ena-release': {
    source: 'Energy Networks Association, angling safety release, as a magazine reprints it',
    basis: 'second-hand',
  },
  'esb-fishing': { source: 'ESB Networks, fishing tips', basis: 'seen' },
  'wood-poles': {
    source: 'network operators’ campaign of 2024: lines on wood poles may carry up to 132,000 V',
    basis: 'seen',
  },
  'operator-articles': {
    source: 'network operators in the local press, 2016 and 2018: set up and take down at the water’s edge',
    basis: 'seen',
  },
  fishsafe: { source: 'NIE Networks, FishSafe, 2017 and 2018', basis: 'seen' },
  'operator-notices': { source: 'network operators’ service notices: 105, and 999 in danger', basis: 'seen' },
  'fire-brigade': { source: 'London Fire Brigade, Survival and rescue', basis: 'seen' },
  'cold-shock': {
    source: 'Royal National Lifeboat Institution, release of April 2018; London Fire Brigade',
    basis: 'seen',
  },
  'cold-water': { source: 'Royal National Lifeboat Institution, as a university quotes it', basis: 'second-hand' },
  'ramblers-lightning': { source: 'Ramblers, lightning: the 30/30 rule, shelter, rods down', basis: 'seen' },
  'army-engineers-ice': { source: 'US Army Corps of Engineers, Tulsa, 2013: no ice is safe ice', basis: 'seen' },
  'lifesavers-ice': { source: 'RoSPA and the Royal Life Saving Society UK on ice', basis: 'memory' },
  'algae-agency': {
    source: 'Environment Agency statements on blue-green algae, in its releases and on the BBC',
    basis: 'seen',
  },
  'algae-scum': { source: 'World Health Organization, recreational water, 2003: visible scum', basis: 'seen' },
  'agency-incidents': { source: 'Environment Agency incident line, 24 hours, England', basis: 'seen' },
  leptospirosis: { source: 'a union’s safety page, and club and boating pages', basis: 'seen' },
  hogweed: { source: 'Property Care Association, guidance note on giant hogweed, 2019', basis: 'seen' },
  ticks: { source: 'UK Health Security Agency, as the news quotes it', basis: 'second-hand' },
  stings: { source: 'NHS, insect stings', basis: 'memory' },
  'high-winds': { source: 'National Trust, Hatfield Forest, high-winds policy', basis: 'seen' },
  'after-storm': { source: 'National Trust, Wenlock Edge, 2016: look at trees before reopening', basis: 'seen' },
  nests: { source: 'Wildlife and Countryside Act 1981, section 1, as several pages quote it', basis: 'seen' },
  'nesting-months': { source: 'RSPB advice, as a parish page quotes it', basis: 'second-hand' },
  'protected-trees': {
    source: 'Town and Country Planning Act 1990, section 211; planning practice guidance; council pages',
    basis: 'seen',
  },
  'special-interest': { source: 'Wildlife and Countryside Act 1981, section 28E; Natural England', basis: 'seen' },
  chainsaws: { source: 'PUWER 1998, code of practice L112; HSE', basis: 'memory' },
  herbicide: { source: 'Environment Agency, scheme for herbicides in or near water', basis: 'memory' },
  waste: { source: 'Environmental Protection Act 1990, sections 33 and 34', basis: 'memory' },
  'lines-at-work': { source: 'HSE guidance note GS6, as network operators quote it', basis: 'seen' },
  'text-999': { source: 'emergencySMS, as fire service and NHS pages give it', basis: 'seen' },
  'emergency-112': { source: 'UK practice: 112 reaches the same operators as 999', basis: 'memory' },
  'aed-by-call': { source: 'UK practice: the call handler directs to the nearest defibrillator', basis: 'memory' },
} as const satisfies Record<string, SafetySource>;

export type SafetySourceId = keyof typeof SAFETY_SOURCES;

const BASIS_WORDS: Readonly<Record<SafetySource['basis'], string>> = {
  seen: 'read there',
  'second-hand': 'second-hand',
  memory: 'from memory: check before use',
  none: '',
};

/** A source in words: "London Fire Brigade, Survival and rescue (read there)", "common practice, no source". */
export function safetySourceWords(id: SafetySourceId): string {
  const { source, basis } = SAFETY_SOURCES[id];
  return basis === 'none' ? source : `${source} (${BASIS_WORDS[basis]})`;
}
