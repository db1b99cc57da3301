import { expect, test } from 'vitest';
import { childEnvironment } from './child-environment.ts';

test('a command that a test starts knows nothing of the test runner', () => {
  expect(process.env.VITEST).toBe('true');
  expect(process.env.BASE_URL).toBe('/');
  const environment = childEnvironment({ VENUE_DIR: 'folder' });
  expect(Object.keys(environment).filter((name) => /VITEST|^BASE_URL$|^MODE$|^DEV$/.test(name))).toEqual([]);
  expect(environment).toMatchObject({
    VENUE_DIR: 'folder',
    SITE_ADDRESS: '/',
    NODE_ENV: 'production',
    PATH: process.env.PATH,
  });
});
