import type { Notice } from '../../../src/domain/notice.ts';

/** The demo's bank notices: live on the guide's day, upcoming, past and replaced. */
export const NOTICES: readonly Notice[] = [
  {
    id: '2025-02-24-tallyman-numbers',
    title: 'Tallyman: 6 is gone, 4 and 5 are 5 and 6',
    kind: 'news',
    from: '2025-02-24',
    until: '2025-05-31',
    waters: ['tallyman-lake'],
    pegs: [],
    markdown:
      'The bank under old peg 6 slipped and nobody will fish it again. A new peg 4 stands by the open water, so from 1 March the old 4 and 5 are painted 5 and 6. Sheets from before keep their numbers: the guide knows which post carried what.',
  },
  {
    id: '2025-02-23-tail-lilies',
    title: 'Eelback: the tail lilies are out',
    kind: 'works',
    from: '2025-02-23',
    until: '2025-03-31',
    waters: ['eelback'],
    pegs: ['eelback/36', 'eelback/37'],
    markdown:
      'The work party raked the bed in front of 36 and 37 out before the birds came back. The water will be coloured for a week or two.',
  },
  {
    id: '2026-11-16-soft-post',
    title: 'Eelback 11: soft platform',
    kind: 'hazard',
    from: '2026-11-16',
    waters: [],
    pegs: ['eelback/11'],
    markdown:
      'The left-hand front post of **Eelback 11** moves. The peg stays in the draw for one person who keeps to the right-hand half; whoever draws it may ask for a redraw. The new frame is due before Christmas.',
  },
  {
    id: '2026-11-09-boards-off',
    title: 'Two boards off the Eelback monk',
    kind: 'works',
    from: '2026-11-09',
    until: '2026-12-05',
    waters: ['eelback'],
    pegs: [],
    markdown:
      'Two boards are out of the monk while the brickwork is pointed, and Eelback runs about 4 in lower than usual. Plumb afresh, and keep children away from the grid at peg 20, where the water draws.',
  },
  {
    id: '2026-11-18-winter-hours',
    title: 'Winter draw times',
    kind: 'news',
    from: '2026-11-18',
    until: '2027-02-28',
    waters: [],
    pegs: [],
    markdown: 'Draw at 08:45, all in at 10:00, all out at 14:30. The lodge opens at 07:45 and the kettle is on.',
  },
  {
    id: '2026-11-30-poplars',
    title: 'Tree work behind Tallyman 16 to 20',
    kind: 'closure',
    from: '2026-11-30',
    changedOn: '2026-11-16',
    until: '2026-12-02',
    waters: [],
    pegs: ['tallyman-lake/16', 'tallyman-lake/17', 'tallyman-lake/18', 'tallyman-lake/19', 'tallyman-lake/20'],
    markdown:
      'A licensed tree surgeon takes the dead wood out of the poplars. Pegs 16 to 20 are out, and the path behind them is shut while ropes are up. Walk round by the west bank.',
  },
  {
    id: '2026-12-12-work-party',
    title: 'Work party: Kiln Pool, north bank',
    kind: 'works',
    from: '2026-12-12',
    changedOn: '2026-11-18',
    until: '2026-12-12',
    waters: ['kiln-pool'],
    pegs: [],
    markdown:
      'Meet at the Kiln car park at 09:00 with gloves and boots. Hand tools only; nobody works near the alders at peg 19 or anywhere on the east bank, because of the line.',
  },
  {
    id: '2026-10-05-wasps-gone',
    title: 'Tallyman 19 open again',
    kind: 'news',
    from: '2026-10-05',
    until: '2026-10-31',
    replaces: '2026-08-16-wasps',
    waters: [],
    pegs: ['tallyman-lake/19'],
    markdown: 'The nest has been dealt with by a contractor. Look at the hedge foot before you sit down all the same.',
  },
  {
    id: '2026-08-16-wasps',
    title: 'Wasps at Tallyman 19',
    kind: 'hazard',
    from: '2026-08-16',
    waters: [],
    pegs: ['tallyman-lake/19'],
    markdown: 'A nest at the foot of the hedge. The peg is out of the draw until it is gone. Do not poke it to see.',
  },
  {
    id: '2025-08-11-bloom',
    title: 'Green scum in the bay of Kiln Pool',
    kind: 'hazard',
    from: '2025-08-11',
    until: '2025-09-20',
    waters: ['kiln-pool'],
    pegs: ['kiln-pool/21', 'kiln-pool/22', 'kiln-pool/23'],
    markdown:
      'Blue-green scum lies against the lilies. Assume it is toxic. Dogs and children stay out of the water, hands stay dry, and the bay is not fished until the bailiff says so. Reported on 0800 80 70 60.',
  },
  {
    id: '2025-02-03-line-closures',
    title: 'Kiln Pool 14 to 18 closed for good',
    kind: 'closure',
    from: '2025-02-03',
    until: '2025-12-31',
    waters: [],
    pegs: ['kiln-pool/14', 'kiln-pool/15', 'kiln-pool/16', 'kiln-pool/17', 'kiln-pool/18'],
    markdown:
      'The 11 kV line was measured against the new map. Five pegs lie inside the stand-off and are closed; 12, 13, 19 and 20 stay open with limits that stand on their sheets. If in doubt, do not tackle up: ask.',
  },
];
