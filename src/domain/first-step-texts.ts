import { type SafetyText, says } from './safety-text.ts';

const CREW_FIRST = says('What the call handler, a first-aider or the crew says comes before this.', 'practice');

/** What to do in the first minutes, what cannot wait first. */
export const FIRST_STEP_TEXTS: readonly SafetyText[] = [
  {
    id: 'in-water',
    heading: 'Someone is in the water',
    sign: 'E041',
    sentences: [
      says('Call {emergency}, or make someone call. Do not go in.', 'fire-brigade'),
      says('Tell them to float on their back, arms and legs wide, and keep your eyes on them.', 'fire-brigade'),
      says('Throw a line, a ring or anything that floats. Lie down or hold on before you pull.', 'fire-brigade'),
    ],
    defers: CREW_FIRST,
  },
  {
    id: 'not-breathing',
    heading: 'Not waking, not breathing',
    sign: 'E010',
    sentences: [
      says('Call {emergency}, put the phone on speaker and do what you are told.', 'practice'),
      says(
        'Not breathing normally: push hard and fast on the middle of the chest and do not stop until help takes over. Odd gasps are not breathing.',
        'practice',
      ),
      says('Taught rescue breaths? Give them too: after the water they count.', 'practice'),
      says('Send someone for the defibrillator, switch it on and do as it says.', 'practice'),
      says('The call handler knows where the nearest one hangs and its code.', 'aed-by-call'),
    ],
    defers: CREW_FIRST,
  },
  {
    id: 'line-touched',
    heading: 'A person or tackle has touched a power line',
    sign: 'W012',
    sentences: [
      says('Stay well away and keep everyone away. The ground round it can be live too.', 'practice'),
      says(
        'Call {power}, and {emergency} where anyone is hurt or in danger. Say it is a power line.',
        'operator-notices',
      ),
      says(
        'Do not touch the person, or anything that touches them, until the network operator says the power is off.',
        'practice',
      ),
      says('Tackle on a line: let go of it. Never pull, never try to free it.', 'fishsafe'),
    ],
    defers: says('Work on or near a line is for the network operator alone.', 'practice'),
  },
  {
    id: 'out-and-cold',
    heading: 'Out of the water and cold',
    sign: 'W010',
    sentences: [
      says('Out of the wind, wet clothes off, dry and wrapped up, head too. Handle them gently.', 'practice'),
      says('Warm sweet drinks only for someone wide awake. No alcohol, no rubbing, no hot bath.', 'practice'),
      says('Drowsy, muddled, or the shivering has stopped: lay them down and call {emergency}.', 'practice'),
      says(
        'Anyone who has breathed in water sees a doctor that day, however well they feel; short of breath, call {emergency}.',
        'practice',
      ),
    ],
    defers: CREW_FIRST,
  },
  {
    id: 'algae-contact',
    heading: 'Algae on the skin, or swallowed',
    sign: 'W009',
    sentences: [
      says('Wash it off at once with clean water and get out of wet clothes.', 'practice'),
      says('It can upset the stomach and bring a rash, and it can kill animals.', 'algae-agency'),
      says('Unwell afterwards: see a doctor and say that you touched blue-green algae.', 'practice'),
      says('A dog that has been in: rinse it, stop it licking itself, and straight to the vet.', 'practice'),
    ],
    defers: says('What a doctor, a vet or the environment agency says comes before this.', 'practice'),
  },
];
