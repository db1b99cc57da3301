import { rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { demoFiles } from './demo-files.ts';
import { writeFiles } from './write-venue.ts';

/** Writes the demo venue into `content/`, or into the folder given as `--to`; what stood there before is removed. */
const { values } = parseArgs({ options: { to: { type: 'string' } } });
const folder = values.to ?? fileURLToPath(new URL('../../content/', import.meta.url));
const files = demoFiles();
rmSync(folder, { recursive: true, force: true });
writeFiles(files, folder);
console.log(`Wrote ${files.size} files of the demo venue to ${folder}`);
