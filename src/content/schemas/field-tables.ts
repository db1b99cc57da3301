import { fieldList, type SchemaPart } from './field-list.ts';
import { jsonSchemas } from './json-schemas.ts';

const HEAD = `# Every field, file by file

Written by \`npm run -s venue -- schema\` from the schemas by which the folder is read; [the format](format.md) says what each is for.
A dot leads into a map of fields, \`[]\` into the entries of a list. A yes means that the thing the field belongs to must have it.
`;

/** `fields.md`: a table of every field for each kind of file, from the schemas that read them. */
export function fieldTables(): string {
  const tables = [...jsonSchemas().values()].map((text) => {
    const schema = JSON.parse(text) as SchemaPart & { readonly title: string };
    const rows = fieldList(schema).filter(({ field }) => !field.includes('geometry'));
    return [
      `## ${schema.title}`,
      '',
      '| field | must be there | value | what it is |',
      '| --- | --- | --- | --- |',
      ...rows.map(
        ({ field, isNeeded, values, about }) =>
          `| \`${field}\` | ${isNeeded ? 'yes' : ''} | ${cell(values)} | ${cell(about)} |`,
      ),
    ].join('\n');
  });
  return `${[HEAD, ...tables].join('\n')}\n`.replaceAll(/\n(## )/g, '\n\n$1').replaceAll(/\n{3,}/g, '\n\n');
}

/** Text that stays within its cell. */
function cell(text: string): string {
  return text.replaceAll('|', '\\|').replaceAll('<', '&lt;').replaceAll('\n', ' ');
}
