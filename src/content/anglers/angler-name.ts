/** A name as it is compared, never kept: small letters, no marks, titles or figures. */
export interface AnglerName {
  /** All of it: `peter pask`. */
  readonly full: string;
  /** First letter and surname: `p pask`. */
  readonly initial: string;
  readonly surname: string;
  /** Whether no more than the first letter of the first name is written. */
  readonly isInitialOnly: boolean;
}

const TITLES = new Set(['mr', 'mrs', 'ms', 'miss', 'dr', 'rev', 'sir', 'jnr', 'jr', 'junior', 'snr', 'sr', 'senior']);

/** Short forms of first names in common British use; one row is one name. Common knowledge, no source. */
const SHORT_FORMS: readonly (readonly string[])[] = [
  ['alan', 'al', 'allan', 'allen'],
  ['albert', 'bert', 'bertie'],
  ['alexander', 'alex', 'sandy'],
  ['andrew', 'andy', 'drew'],
  ['anthony', 'antony', 'tony'],
  ['arthur', 'art'],
  ['benjamin', 'ben'],
  ['bernard', 'bernie'],
  ['catherine', 'katherine', 'kathryn', 'cath', 'kate', 'kath', 'kathy', 'katie'],
  ['christopher', 'chris'],
  ['christine', 'christina', 'chris', 'tina'],
  ['clifford', 'cliff'],
  ['daniel', 'dan', 'danny'],
  ['david', 'dave', 'davy'],
  ['deborah', 'debra', 'deb', 'debbie'],
  ['dennis', 'denis', 'den'],
  ['derek', 'derrick', 'del'],
  ['donald', 'don'],
  ['douglas', 'doug'],
  ['edward', 'ed', 'eddie', 'ted', 'teddy'],
  ['elizabeth', 'liz', 'beth', 'lizzie'],
  ['francis', 'frank', 'frankie'],
  ['frederick', 'fred', 'freddie'],
  ['geoffrey', 'jeffrey', 'geoff', 'jeff'],
  ['gerald', 'gerard', 'gerry', 'jerry'],
  ['graham', 'graeme'],
  ['gregory', 'greg'],
  ['harold', 'harry'],
  ['henry', 'harry'],
  ['ian', 'iain'],
  ['jacob', 'jake'],
  ['james', 'jim', 'jimmy', 'jamie'],
  ['jonathan', 'jon', 'jonny'],
  ['john', 'jack', 'johnny', 'jon'],
  ['joseph', 'joe', 'joey'],
  ['kenneth', 'ken', 'kenny'],
  ['kevin', 'kev'],
  ['lawrence', 'laurence', 'larry', 'laurie'],
  ['leonard', 'len', 'lenny'],
  ['leslie', 'les'],
  ['malcolm', 'mal'],
  ['margaret', 'maggie', 'meg', 'peggy'],
  ['martin', 'marty'],
  ['matthew', 'matt'],
  ['michael', 'mike', 'mick', 'micky'],
  ['nathaniel', 'nathan', 'nat'],
  ['neil', 'neal'],
  ['nicholas', 'nick', 'nicky'],
  ['norman', 'norm'],
  ['patricia', 'pat', 'patsy', 'tricia'],
  ['patrick', 'pat', 'paddy'],
  ['peter', 'pete'],
  ['philip', 'phillip', 'phil'],
  ['raymond', 'ray'],
  ['reginald', 'reg'],
  ['richard', 'rich', 'richie', 'rick', 'ricky', 'dick'],
  ['robert', 'rob', 'bob', 'bobby', 'robbie'],
  ['roger', 'rodger'],
  ['ronald', 'ron', 'ronnie'],
  ['samuel', 'sam'],
  ['stanley', 'stan'],
  ['stephen', 'steven', 'steve', 'ste'],
  ['stuart', 'stewart', 'stu'],
  ['susan', 'sue', 'suzanne'],
  ['terence', 'terry'],
  ['thomas', 'tom', 'tommy'],
  ['timothy', 'tim'],
  ['trevor', 'trev'],
  ['victor', 'vic'],
  ['walter', 'wally', 'walt'],
  ['william', 'bill', 'billy', 'will'],
];

/**
 * A name as written, made comparable: compatibility letters and marks taken apart (Unicode NFKD), titles, figures and
 * what stands in brackets taken off, `Surname, First` turned round.
 * @returns null where no letter is left
 */
export function anglerName(written: string): AnglerName | null {
  const plain = written
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .replace(/\([^)]*\)|\[[^\]]*\]/g, ' ')
    .toLowerCase();
  const comma = plain.split(',').map((part) => part.trim());
  const turned =
    comma.length === 2 && comma[0] !== '' && wordsOf(comma[1]!).length > 0 ? `${comma[1]} ${comma[0]}` : plain;
  const words = wordsOf(turned);
  const surname = words.at(-1);
  if (surname === undefined) return null;
  const first = words.length > 1 ? words[0]! : '';
  return {
    full: words.join(' '),
    initial: first === '' ? surname : `${first[0]} ${surname}`,
    surname,
    isInitialOnly: first.length <= 1,
  };
}

function wordsOf(text: string): readonly string[] {
  return text
    .replace(/['’`]/g, '')
    .split(/[^\p{L}]+/u)
    .filter((word) => word !== '' && !TITLES.has(word));
}

/** The same name under the other forms of its first name: `pete pask` for `peter pask`. */
export function otherForms({ full }: AnglerName): readonly string[] {
  const [first, ...rest] = full.split(' ');
  if (first === undefined || rest.length === 0) return [];
  const forms = SHORT_FORMS.filter((row) => row.includes(first)).flat();
  return [...new Set(forms)].filter((form) => form !== first).map((form) => [form, ...rest].join(' '));
}

const SOUNDS: Readonly<Record<string, string>> = {
  b: '1',
  f: '1',
  p: '1',
  v: '1',
  c: '2',
  g: '2',
  j: '2',
  k: '2',
  q: '2',
  s: '2',
  x: '2',
  z: '2',
  d: '3',
  t: '3',
  l: '4',
  m: '5',
  n: '5',
  r: '6',
};

/** Soundex of a surname (Russell 1918, in the form of the United States National Archives): `pask` and `paske` are one. */
export function soundOf(surname: string): string {
  const letters = surname.replace(/[^a-z]/g, '');
  if (letters === '') return surname;
  let code = letters[0]!.toUpperCase();
  let last = SOUNDS[letters[0]!];
  for (const letter of letters.slice(1)) {
    const sound = SOUNDS[letter];
    if (sound !== undefined && sound !== last) code += sound;
    // h and w do not part two letters of one sound; a vowel does.
    if (letter !== 'h' && letter !== 'w') last = sound;
  }
  return code.padEnd(4, '0').slice(0, 4);
}
