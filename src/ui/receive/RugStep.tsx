import { Link } from 'wouter';
import { residuesIn } from '../../dossier/index.ts';
import { useRows, useRug, useSettings } from '../call/index.ts';
import { stainWords } from '../dossier/figures.ts';
import { Button, LineField, Notice, newId } from '../kit/index.ts';
import type { RugStepProps } from './stepProps.ts';

/** Which rug it is, and the tag that is tied to it. */
export function RugStep(props: RugStepProps) {
  const { intake, rug, changeRug, faults } = props;
  const known = rug.known;
  return (
    <div className="form">
      {known === null ? (
        <>
          {intake.client.kind === 'found' ? <BeenHere {...props} client={intake.client.client} /> : null}
          <LineField
            label="What does it look like?"
            value={rug.title}
            onChange={(title) => changeRug({ title })}
            hint="A few words to know it by, such as “red runner with three medallions”"
            problem={faults['title'] ?? null}
            isRequired
          />
        </>
      ) : (
        <>
          <Notice tone="ok" title={`Dossier ${known.number}: ${known.title}`}>
            <p>It has been here before. What is known of it stays; this begins a new visit.</p>
            <Button tone="ghost" onPress={() => changeRug({ known: null, rug: newId(), title: '' })}>
              It is another rug
            </Button>
          </Notice>
          <WentHomeWith rug={rug.rug} />
        </>
      )}
      <TagField {...props} />
    </div>
  );
}

/** What no rinse was read to have taken out when it left: it may still be in it. */
function WentHomeWith({ rug }: { readonly rug: string }) {
  const { standing } = useRug(rug);
  const settings = useSettings();
  const residues = residuesIn(standing, settings).map(({ agent, where }) =>
    where === null ? agent : `${agent} at ${stainWords(standing.marks, where)}`,
  );
  if (residues.length === 0) return null;
  return (
    <Notice tone="caution" title={`It went home with ${[...new Set(residues)].join(', ')}.`}>
      <p>
        No reading showed it rinsed or aired out, so it counts as still there. Ask what was done to it since,
        and write it down in its dossier.
      </p>
    </Notice>
  );
}

/** The client's rugs that were here before and are not here now. */
function BeenHere(props: RugStepProps & { readonly client: string }) {
  const { rows } = useRows({ client: props.client });
  const taken = new Set(props.intake.rugs.map(({ rug }) => rug));
  const home = rows.filter((row) => !row.inHouse && !taken.has(row.stream.slice('rug/'.length)));
  if (home.length === 0) return null;
  return (
    <fieldset className="beenHere">
      <legend>Has been here before</legend>
      {home.slice(0, 6).map((row) => (
        <Button
          key={row.stream}
          tone="ghost"
          onPress={() =>
            props.changeRug({
              rug: row.stream.slice('rug/'.length),
              known: { number: row.body.number, title: row.body.title },
              title: row.body.title,
            })
          }
        >
          {row.body.number} · {row.body.title}
        </Button>
      ))}
    </fieldset>
  );
}

function TagField({ intake, rug, changeRug, faults }: RugStepProps) {
  const tag = rug.tag.trim();
  const { rows } = useRows({ inHouse: true, limit: 500 });
  const other = rows.find((row) => row.tag === tag && tag !== '');
  const used = new Set([...rows.map((row) => row.tag), ...intake.rugs.map((each) => each.tag.trim())]);
  const free = Array.from({ length: 600 }, (_, index) => String(index + 1)).find(
    (number) => !used.has(number),
  );
  return (
    <>
      <LineField
        label="Tag number"
        value={rug.tag}
        onChange={(typed) => changeRug({ tag: typed })}
        hint="The number on the wash-proof tag; its QR label can be printed at the end"
        problem={
          faults['tag'] ??
          (other === undefined
            ? null
            : `Tag ${tag} is on “${other.body.title}”, which is in the house. Two rugs with one tag cannot be told apart when wet. Take a free tag, or see whether this is that rug.`)
        }
        mostCharacters={12}
        isRequired
      />
      <div className="actions">
        {free === undefined || tag === free ? null : (
          <Button tone="ghost" onPress={() => changeRug({ tag: free })}>
            Take tag {free}, which is free
          </Button>
        )}
        {other === undefined ? null : (
          <Link className="btn ghost" href={`/rugs/${other.stream.slice('rug/'.length)}`}>
            Look at the rug with tag {tag}
          </Link>
        )}
      </div>
    </>
  );
}
