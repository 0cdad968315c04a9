/** Where a tag's code leads: to a dossier by its id, or to whatever rug carries that tag now. */
export type TagCode =
  | { readonly kind: 'rug'; readonly rug: string }
  | { readonly kind: 'tag'; readonly tag: string };

/** Reads the text of a tag's code. Null when it is no code of ours. */
export function tagCodeOf(text: string): TagCode | null {
  const rug = /\/rugs\/([0-9A-Za-z][0-9A-Za-z_-]{0,63})\/?$/.exec(text)?.[1];
  if (rug !== undefined) return { kind: 'rug', rug };
  const tag = /^(?:.*[?&]tag=)?([0-9A-Za-z-]{1,12})$/.exec(text.trim())?.[1];
  return tag === undefined ? null : { kind: 'tag', tag };
}
