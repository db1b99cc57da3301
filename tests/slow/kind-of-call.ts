/** What a call that changes the disk is about: its name and its place, without what differs from run to run. */
export const kindOf = (call: string): string =>
  call
    .replaceAll(/\d{3,}/g, 'N')
    .replaceAll(/[0-9a-f]{12,}/g, 'H')
    .replace(/(unfinished-N| N)\/.*/, (_, folder: string) => `${folder}/…`);
