/** What the keys of messages begin with that scripts of the browser say; `day.months` they take for the names of months. */
export const SCRIPT_WORDS = ['day.months', 'find', 'found', 'kept', 'pace', 'typed'];
