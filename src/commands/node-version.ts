/** The oldest Node that knows what this program is written in; `engines` of the package says the same. */
export const LEAST_NODE = [22, 12] as const;

/** What to tell somebody whose Node is too old, null where it will do: an installer only warns of it. */
export function tooOldNode(version: string): string | null {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  const [leastMajor, leastMinor] = LEAST_NODE;
  if (major > leastMajor || (major === leastMajor && minor >= leastMinor)) return null;
  return `Peg Atlas needs Node ${LEAST_NODE.join('.')} or newer, and this is Node ${version}. Install a newer one, and run this again.`;
}
