/** What the person at the command line asked of an import. */
export interface ImportOptions {
  /** File of kept answers; beside the venue folder unless named. */
  readonly answers: string | null;
  /** Folder of the club's key and register of anglers; in the person's own settings unless named. */
  readonly keys: string | null;
  /** Whether it may write without being asked. */
  readonly isAgreed: boolean;
  readonly isJson: boolean;
}
