import { isAbsolute, type PlatformPath, relative, sep } from 'node:path';

/** Whether a path is a folder or lies in it. On Windows the way from one drive to another is no relative one. */
export function liesInside(
  folder: string,
  path: string,
  paths: Pick<PlatformPath, 'isAbsolute' | 'relative' | 'sep'> = { isAbsolute, relative, sep },
): boolean {
  const way = paths.relative(folder, path);
  return way.split(paths.sep)[0] !== '..' && !paths.isAbsolute(way);
}
