import { type SafetyText, says } from './safety-text.ts';

const CLUB_FIRST = says('The club’s officials and the notices on the bank come before this.', 'practice');
const TRAINED_FIRST = says('Clearing it away is for people trained and sent by the club.', 'practice');

/** How not to get into trouble. A text with a `kind` begins with what that kind of hazard advises. */
export const STAY_SAFE_TEXTS: readonly SafetyText[] = [
  {
    id: 'power',
    heading: 'Power lines',
    sign: 'W012',
    kind: 'overhead-line',
    sentences: [
      says('Keep {stand-off} away, along the ground, walking too.', 'ena-release'),
      says('Electricity can jump a gap: nothing need touch.', 'esb-fishing'),
      says('Lines on wooden poles may carry up to 132,000 volts.', 'wood-poles'),
      says('Set up and take down at the water’s edge; never walk with a rod made up.', 'operator-articles'),
    ],
    defers: says('Work on or near a line is for the network operator alone.', 'practice'),
  },
  {
    id: 'cold',
    heading: 'If you fall in',
    sign: 'W010',
    kind: 'cold-water',
    sentences: [
      says('The gasping passes in about {cold-shock-passes}.', 'cold-shock'),
      says('Water below {cold-water} is cold water; most of the year this is.', 'cold-water'),
    ],
    defers: says('A lifejacket and lessons are worth more than this page.', 'practice'),
  },
  {
    id: 'alone',
    heading: 'Fishing alone',
    sign: 'W001',
    sentences: [
      says('Tell somebody the peg’s number and when you will be back, and tell them when you are.', 'practice'),
      says('Keep the phone on you, dry and charged, and know whether it has a signal at the peg.', 'practice'),
      says('Leave deep edges and frozen boards for a day with company.', 'practice'),
    ],
    defers: says('Where the club asks for two, its rule stands.', 'practice'),
  },
  {
    id: 'lightning',
    heading: 'Thunder',
    sign: 'W001',
    sentences: [
      says(
        'Hear it, stop: rods and poles down, away from the water, into a building or a hard-topped car. Not under trees, brollies or bivvies.',
        'ramblers-lightning',
      ),
      says('Wait {lightning-wait} after the last thunder; each clap starts it again.', 'ramblers-lightning'),
    ],
    defers: says('Where the organiser stops the match sooner, it is stopped.', 'practice'),
  },
  {
    id: 'ice',
    heading: 'Ice',
    sign: 'W043',
    kind: 'thin-ice',
    sentences: [
      says('Keep dogs on the lead.', 'lifesavers-ice'),
      says('Do not break it to fish: a swim that is iced over is not fished.', 'practice'),
      says('Someone through the ice: call {emergency}, do not follow them, throw a line.', 'fire-brigade'),
    ],
    defers: CLUB_FIRST,
  },
  {
    id: 'algae',
    heading: 'Blue-green algae',
    sign: 'W009',
    kind: 'algae-scum',
    sentences: [
      says('It drifts from day to day and bank to bank: look again every day.', 'algae-agency'),
      says('Tell the bailiff.', 'practice'),
      says('Report it, and fish in distress: {pollution}.', 'agency-incidents'),
    ],
    defers: says('What the environment agency or the council says of the water comes first.', 'practice'),
  },
  {
    id: 'leptospirosis',
    heading: 'Rats and leptospirosis',
    sign: 'W009',
    kind: 'rats',
    sentences: [
      says('Waterproof plasters on cuts, nothing wet in your mouth, no bait left behind.', 'leptospirosis'),
      says(
        'Flu-like illness within about {leptospirosis-watch}: tell the doctor you were at the water.',
        'leptospirosis',
      ),
    ],
    defers: says('Your doctor’s word comes before this.', 'practice'),
  },
  {
    id: 'wind',
    heading: 'Wind under trees',
    sign: 'W035',
    kind: 'falling-branch',
    sentences: [
      says('After a blow keep off until somebody has looked at the trees: limbs can fail later.', 'after-storm'),
      says('One estate closes its woods at forecast gusts of {gust-under-trees}.', 'high-winds'),
    ],
    defers: says('Trees are judged and cut by trained people alone.', 'practice'),
  },
  {
    id: 'bank',
    heading: 'Bank and platform',
    sign: 'W011',
    kind: 'slippery',
    sentences: [
      says('One load at a time, and one person on a platform.', 'practice'),
      says('Boards that rock, give or are missing: do not use it, ask for a redraw.', 'practice'),
    ],
    defers: CLUB_FIRST,
  },
  {
    id: 'silt',
    heading: 'Deep silt',
    sign: 'W001',
    kind: 'deep-silt',
    sentences: [
      says('Stuck: stop struggling, lean back, spread your weight, shout, and work the legs out slowly.', 'practice'),
      says('Do not walk out to anyone who is stuck: call {emergency} and throw a line.', 'practice'),
    ],
    defers: says('Getting someone out of mud is for the fire service.', 'practice'),
  },
  {
    id: 'sluice',
    heading: 'Sluices, pipes and current',
    sign: 'W001',
    kind: 'sluice-current',
    sentences: [says('Water that looks still can draw strongly below. Children and dogs well back.', 'practice')],
    defers: says('Sluices and boards are worked by the club or the water’s owner alone.', 'practice'),
  },
  {
    id: 'flood',
    heading: 'Flood',
    sign: 'W001',
    kind: 'flood',
    sentences: [says('Never walk or drive through flood water, however shallow it looks.', 'practice')],
    defers: says('Flood warnings and what the emergency services say come first.', 'practice'),
  },
  {
    id: 'fence',
    heading: 'Electric fences',
    sign: 'W012',
    kind: 'electric-fence',
    sentences: [says('Nobody steps over or crawls under one, children least of all.', 'practice')],
    defers: says('The fence is switched off or moved by the farmer alone.', 'practice'),
  },
  {
    id: 'vehicles',
    heading: 'Vehicles',
    sign: 'W001',
    kind: 'vehicles',
    sentences: [says('Park clear of every gate and track: an ambulance needs them.', 'practice')],
    defers: says('Signs on the site and the Highway Code on the road come first.', 'practice'),
  },
  {
    id: 'stings',
    heading: 'Stings, ticks and hogweed',
    sign: 'W009',
    sentences: [
      says('A sting, then swelling or trouble breathing: call {emergency}.', 'stings'),
      says('A tick: fine tweezers close to the skin, pull up steadily; a rash within a month, see a doctor.', 'ticks'),
      says(
        'Hogweed sap on the skin: wash it off and keep it from the sun; blisters can come back for years.',
        'hogweed',
      ),
    ],
    defers: TRAINED_FIRST,
  },
];
