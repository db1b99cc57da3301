import { spawn } from 'node:child_process';
import { handOver } from '../../atlas/handed-over.ts';
import { NO_RATINGS } from '../../atlas/no-ratings.ts';
import { withGround } from '../../atlas/rating-ground.ts';
import { keptRatings } from '../../atlas/ratings-cache.ts';
import type { Fault } from '../../content/fault.ts';
import { loadVenue } from '../../content/load-venue.ts';
import type { VenueRead } from '../../content/read-venue.ts';
import type { Venue } from '../../domain/venue.ts';
import type { Survey } from '../../ground/survey.ts';
import { surveyVenue } from '../../ground/survey-venue.ts';
import type { Ratings } from '../../ratings/ratings.ts';

/** What came of a change in the folder. */
export type Followed =
  | { readonly kind: 'shown'; readonly read: VenueRead; readonly areRatingsOld: boolean }
  | { readonly kind: 'faults'; readonly read: VenueRead; readonly first: Fault }
  | { readonly kind: 'rated' };

/** How long a folder must be still before it is read: a save writes several times. */
const STILL_MS = 120;

/**
 * Follows a venue folder for the pages: what is whole is handed over at once with the ratings there are, and new ones are
 * worked out in a process of their own; what has faults is told, and the pages keep what was whole.
 */
export class FollowedFolder {
  readonly #folder: string;
  readonly #tell: (followed: Followed) => void;
  #timer: NodeJS.Timeout | undefined;
  #rater: ReturnType<typeof spawn> | undefined;
  #ratings: Ratings = NO_RATINGS;
  #rated = '';
  #reading: Promise<void> = Promise.resolve();

  constructor(folder: string, tell: (followed: Followed) => void) {
    this.#folder = folder;
    this.#tell = tell;
  }

  /** Something in the folder was written: it is read once it is still. */
  changed(): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      this.#reading = this.#reading.then(() => this.read());
    }, STILL_MS);
  }

  /** Reads the folder and hands it over, or tells its faults. */
  async read(): Promise<void> {
    const read = await loadVenue(this.#folder);
    const { venue, faults } = read;
    if (venue === null) {
      const first = faults.find(({ severity }) => severity === 'error') ?? faults[0];
      if (first !== undefined) this.#tell({ kind: 'faults', read, first });
      return;
    }
    const survey = surveyVenue(venue);
    const kept = await keptRatings(withGround(venue, survey));
    this.#rater?.kill();
    // Worth of other pegs or parts have no place on these pages.
    if (kept !== null) this.#ratings = kept;
    else if (this.#rated !== ratedThings(venue)) this.#ratings = NO_RATINGS;
    this.#rated = ratedThings(venue);
    this.#show(read, survey, kept === null);
    this.#tell({ kind: 'shown', read, areRatingsOld: kept === null });
    if (kept === null) this.#rate(read, survey);
  }

  /** Stops what is still at work. */
  stop(): void {
    clearTimeout(this.#timer);
    this.#rater?.kill();
  }

  #show(read: VenueRead, survey: Survey, areRatingsOld: boolean): void {
    handOver({ folder: this.#folder, read, survey, ratings: this.#ratings, areRatingsOld });
  }

  #rate(read: VenueRead, survey: Survey): void {
    const [program, command = ''] = process.argv;
    const rater = spawn(program ?? process.execPath, [command, 'ratings', '--json', '--venue', this.#folder], {
      stdio: 'ignore',
    });
    this.#rater = rater;
    rater.once('exit', async () => {
      // Of a log that has changed again since, they come with the next reading.
      if (this.#rater !== rater || read.venue === null) return;
      const ratings = await keptRatings(withGround(read.venue, survey));
      if (ratings === null) return;
      this.#ratings = ratings;
      this.#show(read, survey, false);
      this.#tell({ kind: 'rated' });
    });
  }
}

/** What ratings are of: the parts of a bag, the features and the pegs with theirs. */
function ratedThings({ settings, pegs }: Venue): string {
  return JSON.stringify([
    settings.bagParts,
    settings.features,
    pegs.map(({ water, peg, features }) => [water, peg, features]),
  ]);
}
