import type { WordValues } from './say.ts';

const PLURAL = /\{(\w+), plural, ((?:(?:=\d+|[a-z]+) \{(?:[^{}]|\{\w+\})*\} ?)+)\}/g;
const CHOICE = /(=\d+|[a-z]+) \{((?:[^{}]|\{\w+\})*)\}/g;
const PLACE = /\{(\w+)\}/g;

/**
 * Says a message on the phone: its places filled, and the form its number needs. This is the part of ICU MessageFormat that the
 * messages of scripts keep to (a test holds them to it); the library for all of it weighs more than any page here.
 * @param tag of the language, for its plurals: a BCP 47 tag
 * @throws where a value of the message is not given
 */
export function fillWords(message: string, values: WordValues, tag: string): string {
  return message
    .replace(PLURAL, (_all, name: string, choices: string) => chosenForm(choices, Number(filledBy(values, name)), tag))
    .replace(PLACE, (_all, name: string) => String(filledBy(values, name)));
}

function chosenForm(choices: string, count: number, tag: string): string {
  const forms = new Map([...choices.matchAll(CHOICE)].map(([, of = '', form = '']) => [of, form]));
  const form = forms.get(`=${count}`) ?? forms.get(new Intl.PluralRules(tag).select(count)) ?? forms.get('other');
  return (form ?? '').replaceAll('#', count.toLocaleString(tag));
}

function filledBy(values: WordValues, name: string): string | number {
  const value = values[name];
  if (value === undefined) throw new Error(`The message has a place ${name}, and no value is given for it.`);
  return value;
}
