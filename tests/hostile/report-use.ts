import { writeFileSync } from 'node:fs';

/** Preloaded into a command under test: writes down what it took of processor and memory when it ends. */
process.on('exit', () => {
  const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
  const use = { seconds: (userCPUTime + systemCPUTime) / 1e6, megabytes: maxRSS / 1024 };
  writeFileSync(process.env.USE_REPORT ?? 'use.json', JSON.stringify(use));
});
