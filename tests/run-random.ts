import { spawnSync } from 'node:child_process';

/** The unit suite with property tests on a new seed each time; a failure prints its seed and path. */
const { status } = spawnSync('npm', ['run', '-s', 'test:unit'], {
  stdio: 'inherit',
  shell: true,
  env: { ...process.env, PEG_ATLAS_RANDOM: '1' },
});
process.exitCode = status ?? 1;
