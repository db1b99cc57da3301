import { isCancel, select, text } from '@clack/prompts';
import type { Prompts } from './command-io.ts';

/** Questions at a terminal, on standard error, so that what a command prints can be piped. */
export const TERMINAL_PROMPTS: Prompts = {
  text: async ({ message, suggested, fault }) => {
    const answer = await text({
      message,
      output: process.stderr,
      ...(suggested === undefined ? {} : { placeholder: suggested, defaultValue: suggested }),
      validate: (typed) =>
        fault(typed === undefined || typed.trim() === '' ? (suggested ?? '') : typed.trim()) ?? undefined,
    });
    return isCancel(answer) ? null : answer.trim();
  },
  choose: async ({ message, choices, suggested }) => {
    const answer = await select({
      message,
      output: process.stderr,
      options: choices.map(({ value, words }) => ({ value, label: words })),
      ...(suggested === undefined ? {} : { initialValue: suggested }),
    });
    return isCancel(answer) ? null : answer;
  },
};
