import * as z from 'zod';
import type { Notice } from '../../domain/notice.ts';
import { choice, day, matching, text, word } from './fields.ts';
import { withoutUndefined } from './without-undefined.ts';

/** The front matter of a bank notice. */
export const NoticeSchema = z
  .strictObject({
    title: text('its title'),
    kind: choice(['hazard', 'closure', 'works', 'news']),
    from: day('the first day it holds'),
    until: day('the last day it holds').exactOptional(),
    'cancelled-on': day('the first day it no longer holds because it was taken back').exactOptional(),
    'changed-on': day('the day its words were last changed').exactOptional(),
    replaces: text('file name, without ending, of the notice it takes the place of').exactOptional(),
    waters: z.array(word('a water'), { error: 'a list such as [kiln-pool]' }).exactOptional(),
    pegs: z
      .array(
        matching(
          /^[a-z][a-z0-9-]*\/[A-Za-z0-9-]+$/,
          'peg-key',
          'a peg with its water: kiln-pool/23',
          'Write water, a stroke and the peg.',
        ),
        { error: 'a list such as [kiln-pool/23]' },
      )
      .exactOptional(),
  })
  .transform(({ waters, pegs, 'cancelled-on': cancelledOn, 'changed-on': changedOn, ...rest }) =>
    withoutUndefined({ ...rest, cancelledOn, changedOn, waters: waters ?? [], pegs: pegs ?? [] }),
  ) satisfies z.ZodType<Omit<Notice, 'id' | 'markdown'>>;
