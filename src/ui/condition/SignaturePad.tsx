import { type PointerEvent, useRef, useState } from 'react';
import { fewerPoints } from '../../core/condition/index.ts';
import type { ClientFactOf } from '../../dossier/clientFacts.ts';
import { Button, Check, LineField, newId } from '../kit/index.ts';
import './condition.css';

export type Signature = ClientFactOf<'SignatureTaken'>;

interface SignaturePadProps {
  /** What is signed, in one passage the person can read. */
  readonly statement: string;
  /** Name to begin from. */
  readonly name: string;
  readonly value: Signature | null;
  readonly onChange: (signature: Signature | null) => void;
  /** SHA-256 of the paper that was shown, where one was. */
  readonly paper?: string;
}

type Stroke = readonly (readonly number[])[];

const width = 600;
const height = 220;
const mostStrokes = 200;
const fine = 0.0008;

const simplified = (stroke: Stroke): Stroke =>
  fewerPoints(
    stroke.map(([x = 0, y = 0]) => ({ x, y })),
    fine,
  ).map(({ x, y }) => [Number(x.toFixed(4)), Number(y.toFixed(4))]);

/** A signature by finger, pen or mouse; or the name typed under a statement. */
export function SignaturePad(props: SignaturePadProps) {
  const { value, statement, onChange } = props;
  const pad = useRef<SVGSVGElement>(null);
  const [stroke, setStroke] = useState<Stroke>([]);
  const [isTyped, setTyped] = useState(value !== null && value.strokes.length === 0);
  const [name, setName] = useState(value?.name ?? props.name);
  const strokes = value?.strokes ?? [];

  const give = (next: readonly Stroke[], by: string) => {
    if (by.trim() === '') onChange(null);
    else
      onChange({
        type: 'SignatureTaken',
        signature: value?.signature ?? newId(),
        name: by.trim(),
        statement,
        strokes: next.map((each) => each.map(([x = 0, y = 0]) => [x, y])),
        ...(props.paper === undefined ? {} : { paper: props.paper }),
      });
  };
  const placeOf = (event: PointerEvent<SVGSVGElement>): readonly [number, number] => {
    const box = event.currentTarget.getBoundingClientRect();
    const share = (at: number) => Math.min(1.05, Math.max(-0.05, at));
    return [share((event.clientX - box.left) / box.width), share((event.clientY - box.top) / box.height)];
  };
  const up = () => {
    if (stroke.length > 0 && strokes.length < mostStrokes)
      give([...strokes, simplified(stroke)], name || props.name || 'unnamed');
    setStroke([]);
  };
  const rename = (by: string) => {
    setName(by);
    if (value !== null) give(strokes, by);
  };
  const line = (each: Stroke) => each.map(([x = 0, y = 0]) => `${x * width},${y * height}`).join(' ');

  return (
    <div className="form signature">
      <p className="statement">{statement}</p>
      <LineField label="Name of the person who signs" value={name} onChange={rename} isRequired />
      {isTyped ? (
        <Check
          label="I have read this, and my typed name stands for my signature"
          isSelected={value !== null}
          onChange={(agreed) => (agreed ? give([], name) : onChange(null))}
          isDisabled={name.trim() === ''}
        />
      ) : (
        <svg
          ref={pad}
          className="signaturePad"
          viewBox={`0 0 ${width} ${height}`}
          preserveAspectRatio="none"
          role="img"
          aria-label={
            strokes.length === 0
              ? 'Empty space to sign in. The name can also be typed instead.'
              : `Signed with ${strokes.length} strokes`
          }
          onPointerDown={(event) => {
            event.currentTarget.setPointerCapture(event.pointerId);
            setStroke([placeOf(event)]);
          }}
          onPointerMove={(event) => {
            if (stroke.length > 0) {
              const place = placeOf(event);
              setStroke((drawn) => [...drawn, place]);
            }
          }}
          onPointerUp={up}
          onPointerCancel={up}
        >
          <line x1={24} x2={width - 24} y1={height * 0.76} y2={height * 0.76} className="rule" />
          {[...strokes, stroke].map((each) => (
            <polyline key={line(each)} points={line(each)} />
          ))}
        </svg>
      )}
      <div className="actions">
        {isTyped ? null : (
          <Button tone="ghost" isDisabled={strokes.length === 0} onPress={() => onChange(null)}>
            Wipe it clean
          </Button>
        )}
        <Button
          tone="ghost"
          onPress={() => {
            onChange(null);
            setTyped(!isTyped);
          }}
        >
          {isTyped ? 'Sign by hand' : 'Type the name instead'}
        </Button>
      </div>
    </div>
  );
}
