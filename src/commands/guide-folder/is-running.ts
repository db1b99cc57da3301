/** Whether a process of this number is at work on this machine. */
export function isRunning(owner: number): boolean {
  if (!Number.isInteger(owner) || owner < 1) return false;
  try {
    process.kill(owner, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
