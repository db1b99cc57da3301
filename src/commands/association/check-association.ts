import { countWords } from '../../domain/count-words.ts';
import { type CommandIo, EXIT } from '../command-io.ts';
import { jsonText } from '../json-text.ts';
import { shownFolder } from '../print-faults.ts';
import { isSound, memberJson, readMembers } from './read-venues.ts';

/** `check` of an association: the faults of each venue, and which of them are clean. */
export async function checkAssociation(folder: string, isJson: boolean, io: CommandIo): Promise<number> {
  const read = await readMembers(folder, isJson, io);
  const ok = isSound(read);
  if (isJson) {
    const venues = read.members.map((member) => ({ ...memberJson(member), counts: member.read.counts }));
    io.print(jsonText({ ok, faults: read.faults, venues }));
    return ok ? EXIT.clean : EXIT.faults;
  }
  for (const member of read.members) {
    const errors = member.read.faults.filter(({ severity }) => severity === 'error').length;
    const { pegs, sessions } = member.read.counts;
    if (member.read.venue === null) io.printError(`${shownFolder(member.folder)}: ${countWords(errors, 'error')}.`);
    else
      io.print(
        `${shownFolder(member.folder)} is clean: ${countWords(pegs, 'peg')}, ${countWords(sessions, 'session')}.`,
      );
  }
  return ok ? EXIT.clean : EXIT.faults;
}
