import data from '../../../../assets/link/dictionary-1.json' with { type: 'json' };

/** The preset dictionary of version 1 of a link: what packed courses have in common. It is never changed. */
export const DICTIONARY = data.parts.join('');
