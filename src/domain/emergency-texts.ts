import { type SafetySentence, says } from './safety-text.ts';

/** What stands beside the numbers of the emergency block. */
export const EMERGENCY_TEXTS: readonly SafetySentence[] = [
  says(
    'No voice? Text {text}: which service, what, where. Only a phone registered beforehand reaches it: text “register” to {text} today. No answer in 3 minutes: send it again.',
    'text-999',
  ),
];

/** Said beside the rescue kit. */
export const AED_TEXT: SafetySentence = says(
  'The call handler also directs you to the nearest defibrillator.',
  'aed-by-call',
);
