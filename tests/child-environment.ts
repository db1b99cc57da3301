/** What the test runner sets for its own workers; a build that finds `BASE_URL` there would serve its pages from it. */
const OF_THE_RUNNER = /^(?:BASE_URL|MODE|DEV|PROD|SSR|TEST|VITEST\w*)$/;

/** The environment of a command that a test starts: this machine's, without the runner's, the demo venue at the top of its host. */
export function childEnvironment(changes: Readonly<Record<string, string>> = {}): NodeJS.ProcessEnv {
  const ours = Object.entries(process.env).filter(([name]) => !OF_THE_RUNNER.test(name));
  return { ...Object.fromEntries(ours), VENUE_DIR: '', SITE_ADDRESS: '/', NODE_ENV: 'production', ...changes };
}
