import type { RugFactOf } from '../../../dossier/index.ts';
import { LineField, PassageField, PhotoTaker } from '../../kit/index.ts';

export type Agreed = RugFactOf<'ConsentGiven'>['agreed'];
export type How = Agreed['how'];

/** What is filled in while it is not yet known to be complete. */
export interface Said {
  readonly words: string;
  readonly witness: string;
  /** As the field of the browser gives it, local time without a zone. */
  readonly spokenAt: string;
  readonly photo: string | null;
}
export const nothingSaid: Said = { words: '', witness: '', spokenAt: '', photo: null };

/** The way of agreeing once all it needs is there. */
export const agreedOf = (how: How, said: Said, signature: string | null): Agreed | null => {
  const words = said.words.trim();
  switch (how) {
    case 'signature on screen':
      return signature === null ? null : { how, signature };
    case 'paper photographed':
      return said.photo === null ? null : { how, photo: said.photo };
    case 'letter or e-mail':
      return words === '' ? null : { how, words, ...(said.photo === null ? {} : { photo: said.photo }) };
    case 'spoken': {
      const at = new Date(said.spokenAt);
      const witness = said.witness.trim();
      if (words === '' || witness === '' || Number.isNaN(at.getTime())) return null;
      return { how, words, witness, spokenAt: at.toISOString() };
    }
  }
};

/** Fields for an agreement that was not signed on this screen. */
export function HowFields(props: {
  readonly how: Exclude<How, 'signature on screen'>;
  readonly said: Said;
  readonly onChange: (said: Said) => void;
}) {
  const { how, said, onChange } = props;
  const change = (part: Partial<Said>) => onChange({ ...said, ...part });
  const photograph = (label: string) => (
    <>
      <PhotoTaker label={label} onTaken={({ photo }) => change({ photo })} />
      {said.photo !== null && <p className="why">✓ photographed</p>}
    </>
  );
  if (how === 'paper photographed') return photograph('Photograph the signed paper');
  return (
    <>
      <PassageField
        label={how === 'spoken' ? 'What the client said' : 'What the client wrote'}
        value={said.words}
        onChange={(words) => change({ words })}
        isRequired
      />
      {how === 'letter or e-mail' && photograph('Photograph the letter')}
      {how === 'spoken' && (
        <>
          <div className="field">
            <label className="name" htmlFor="spoken-at">
              When <span className="needed">needed</span>
            </label>
            <input
              id="spoken-at"
              className="box"
              type="datetime-local"
              value={said.spokenAt}
              onChange={({ target }) => change({ spokenAt: target.value })}
            />
          </div>
          <LineField
            label="Witness"
            value={said.witness}
            onChange={(witness) => change({ witness })}
            isRequired
            hint="who else heard it"
          />
        </>
      )}
    </>
  );
}
