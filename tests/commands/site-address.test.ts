import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { siteAddress, splitAddress } from '../../src/commands/site-address.ts';

describe('the address of a guide', () => {
  it('is split into its origin and the path below it', () => {
    expect(splitAddress('https://club.example/guide')).toEqual({ site: 'https://club.example', base: '/guide/' });
    expect(splitAddress('https://club.example/')).toEqual({ site: 'https://club.example', base: '/' });
    expect(splitAddress('/a/b/')).toEqual({ site: undefined, base: '/a/b/' });
    expect(splitAddress(undefined)).toEqual({ site: undefined, base: '/' });
    expect(splitAddress('not an address')).toEqual({ site: undefined, base: '/' });
  });

  it('comes from the venue, unless the build states another', () => {
    const folder = mkdtempSync(join(tmpdir(), 'venue-'));
    writeFileSync(
      join(folder, 'venue.md'),
      '\uFEFF---\r\nname: X\r\naddress: https://club.example/guide/\r\n---\r\nRules',
    );
    expect(siteAddress({ VENUE_DIR: folder }).base).toBe('/guide/');
    expect(siteAddress({ VENUE_DIR: folder, SITE_ADDRESS: '/' }).base).toBe('/');
    rmSync(folder, { recursive: true });
    expect(siteAddress({ VENUE_DIR: folder })).toEqual({ site: undefined, base: '/' });
  });
});
