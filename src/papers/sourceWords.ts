import references from '../../data/references.json' with { type: 'json' };

interface Reference {
  readonly title: string;
  readonly kind: string;
}

const known: Readonly<Record<string, Reference>> = references;

/**
 * Where a limit or figure comes from, as a paper may print it. Only published works are named as
 * authorities; what is recalled, usual or set here is called that.
 *
 * @param key - key of data/references.json
 * @source none: wording of this project
 */
export function sourceWords(key: string): string {
  const reference = known[key];
  switch (reference?.kind) {
    case 'published':
      return reference.title;
    case 'practice':
      return 'common practice, no published source';
    case 'memory':
      return 'recalled from the literature, not confirmed';
    case 'setting':
      return 'workshop setting';
    default:
      return 'no source on record';
  }
}
