/** A change that was given up before it was made; nothing was written. The message says why. */
export class ChangeRefused extends Error {}
