import { useState } from 'react';
import { Link, useSearch } from 'wouter';
import { looseTagMost, newCardSerial, sheetTagMost } from '../../core/card/index.ts';
import { usePeople, useSettings } from '../call/index.ts';
import { Choice, Empty, LineField, Notice, ProblemNotice, Section, When } from '../kit/index.ts';
import { MeasureBar } from './MeasureBar.tsx';
import { useCards } from './useCards.ts';

const byChance = (count: number): number => {
  const [number = 0] = crypto.getRandomValues(new Uint32Array(1));
  return number % count;
};
const newSerial = () => newCardSerial(byChance);

/** Prints weave cards and keeps how long their bars came out. */
export function CardPage() {
  const settings = useSettings();
  const search = useSearch();
  const [serial, setSerial] = useState(newSerial);
  const [printed, setPrinted] = useState<string | null>(null);
  const [tag, setTag] = useState(() => new URLSearchParams(search).get('tag') ?? '');
  const [paper, setPaper] = useState(settings.paper);
  const [form, setForm] = useState<'window' | 'loose'>('window');
  const most = form === 'loose' ? looseTagMost : sheetTagMost;
  const isTag = tag.trim().length <= most && /^[0-9A-Za-z-]*$/.test(tag.trim());
  const query = new URLSearchParams({ paper, form, ...(tag.trim() === '' ? {} : { tag: tag.trim() }) });
  return (
    <div className="page narrow">
      <Link className="crumb" href="/bench">
        Bench
      </Link>
      <h1>Weave card</h1>
      <p className="lead">
        A printed sheet that lies on the rug and gives a photograph its scale, its perspective and its
        colours.
      </p>
      <Section title="Print a card">
        <div className="form">
          <LineField
            label="Tag of the rug"
            hint="Left empty, the card serves any rug. With a tag, a photograph of another rug is refused."
            value={tag}
            onChange={setTag}
            problem={
              isTag
                ? null
                : `Up to ${most} letters, digits and hyphens${form === 'loose' ? ' on loose pieces; left empty they serve any rug' : ''}.`
            }
            mostCharacters={sheetTagMost}
          />
          <Choice<'window' | 'loose'>
            label="Form"
            options={[
              { value: 'window', words: 'With a window', hint: 'for counts and blots, close up' },
              { value: 'loose', words: 'Four loose pieces', hint: 'for pictures of a whole rug' },
            ]}
            value={form}
            onChange={setForm}
          />
          <Choice
            label="Paper"
            options={[
              { value: 'a4', words: 'A4' },
              { value: 'letter', words: 'Letter' },
            ]}
            value={paper}
            onChange={setPaper}
          />
        </div>
        {isTag ? (
          <p className="actions">
            <a
              className="btn act wide"
              href={`/api/cards/${serial}.pdf?${query}`}
              target="_blank"
              rel="noreferrer"
              onClick={() => {
                setPrinted(serial);
                // Every sheet that is made has a serial of its own.
                setSerial(newSerial());
              }}
            >
              Make the card (PDF)
            </a>
          </p>
        ) : null}
        <p className="why">
          Print it at 100 % on stiff white paper, without fitting to the page.{' '}
          {form === 'window'
            ? 'Cut the window out and lay the card flat on the back of the rug.'
            : 'Measure the bar first, then cut the pieces apart and lay them flat beside the corners.'}
        </p>
      </Section>
      <MeasureSection key={printed} printed={printed} />
    </div>
  );
}

function MeasureSection({ printed }: { readonly printed: string | null }) {
  const { cards, problem } = useCards();
  const people = usePeople();
  const [serial, setSerial] = useState(printed ?? '');
  const [measured, setMeasured] = useState<string | null>(null);
  const typed = serial.trim().toUpperCase();
  const isSerial = /^[0-9A-Z]{6}$/.test(typed);
  return (
    <>
      <Section title="Measure its bar">
        <p>
          A printer may make a card larger or smaller, and no photograph shows it. Measure the bar of each
          card once: without that its scale is unverified, ±3 %.
        </p>
        <LineField
          label="Serial on the card"
          hint="Six letters and digits under the bar."
          value={serial}
          onChange={(next) => {
            setSerial(next);
            setMeasured(null);
          }}
          problem={serial === '' || isSerial ? null : 'Six letters and digits, as printed on the card.'}
          mostCharacters={6}
        />
        {isSerial ? <MeasureBar key={typed} serial={typed} onMeasured={() => setMeasured(typed)} /> : null}
        {measured === null ? null : <Notice tone="ok" title={`Kept for card ${measured}.`} />}
      </Section>
      <Section title="Measured cards">
        <ProblemNotice problem={problem} />
        {cards.length === 0 ? (
          <Empty>No card has been measured yet.</Empty>
        ) : (
          <div className="scroll">
            <table>
              <thead>
                <tr>
                  <th scope="col">Card</th>
                  <th scope="col" className="num">
                    Its 100 mm bar
                  </th>
                  <th scope="col">Measured</th>
                </tr>
              </thead>
              <tbody>
                {cards.map((card) => (
                  <tr key={card.serial}>
                    <th scope="row">{card.serial}</th>
                    <td className="num">{card.barMm} mm</td>
                    <td>
                      <When at={card.measuredAt} />
                      <span className="why">
                        {people.find(({ person }) => person === card.by)?.name ?? 'somebody'}
                      </span>
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        )}
      </Section>
    </>
  );
}
