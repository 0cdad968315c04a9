import { useState } from 'react';
import { Link } from 'wouter';
import {
  knotsPerSquareMetre,
  type NotationId,
  notations,
  readKnotDensity,
  usualNotationSettings,
  writeKnotDensity,
} from '../../core/weave/index.ts';
import { LineField, Notice, NumberField, Picker, Section } from '../kit/index.ts';

/** Rewrites a knot density between all notations of the trade, and says where one had to assume square knots. */
export function ConvertPage() {
  const [text, setText] = useState('');
  const [from, setFrom] = useState<NotationId>('per-square-decimetre');
  const [rajMm, setRajMm] = useState<number | null>(usualNotationSettings.rajMm);
  const settings = { rajMm: rajMm ?? usualNotationSettings.rajMm };
  const ways = notations(settings);
  const way = ways.find(({ id }) => id === from);
  const isBoth = way?.kind === 'both-axes';
  const read = text.trim() === '' ? null : readKnotDensity(text, from, settings);
  const written = read?.ok === true ? ways.map((one) => writeKnotDensity(read.value, one)) : [];
  return (
    <div className="page narrow">
      <Link className="crumb" href="/bench">
        Bench
      </Link>
      <h1>Convert a knot density</h1>
      <Section title="What is written">
        <div className="form">
          <Picker
            label="Written as"
            options={ways.map(({ id, name }) => ({ value: id, words: name }))}
            value={from}
            onChange={(id) => setFrom(ways.find((one) => one.id === id)?.id ?? from)}
          />
          <LineField
            label={isBoth ? 'The two numbers, along the weft first' : 'The number'}
            hint={isBoth ? `Such as 9${way.between}60` : 'Such as 40'}
            value={text}
            onChange={setText}
            problem={read?.ok === false ? read.problem : null}
            mostCharacters={20}
          />
          <NumberField
            label="A raj is counted over"
            hint="Differs by place; it changes every raj figure below."
            unit="mm"
            least={60}
            most={80}
            value={rajMm}
            onChange={setRajMm}
          />
        </div>
      </Section>
      {read?.ok === true ? (
        <Section title="The same in other notations">
          <div className="scroll">
            <table>
              <thead>
                <tr>
                  <th scope="col">Notation</th>
                  <th scope="col" className="num">
                    Figure
                  </th>
                </tr>
              </thead>
              <tbody>
                {written.map(({ notation, name, text: figure, assumesSquare }) => (
                  <tr key={notation}>
                    <th scope="row">{name}</th>
                    <td className="num">
                      <b>{figure}</b>
                      {assumesSquare ? <span className="why">◆ if knots are square</span> : null}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
          {knotsPerSquareMetre(read.value).assumesSquare || written.some((one) => one.assumesSquare) ? (
            <Notice tone="caution" title="Some figures assume square knots.">
              <p>
                One number cannot say how many knots lie along the weft and along the warp. Count both ways on
                the back of the rug to be sure.
              </p>
            </Notice>
          ) : null}
        </Section>
      ) : null}
    </div>
  );
}
