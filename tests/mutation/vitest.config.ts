import { defineConfig } from 'vitest/config';

/** Where a room is named, its own tests alone: what its mutants are worth showing to within minutes. */
const rooms = process.env.MUTATED_ROOM?.split(',') ?? ['domain', 'ground', 'content', 'ratings'];

/** The fast tests of the rooms that the mutation run changes: no builds, no whole demo venue, so that a mutant costs seconds. */
export default defineConfig({
  test: {
    include: [...rooms, 'reference'].map((room) => `tests/${room}/**/*.test.ts`),
    setupFiles: ['tests/property-seed.ts'],
    environment: 'node',
    testTimeout: 120_000,
  },
});
