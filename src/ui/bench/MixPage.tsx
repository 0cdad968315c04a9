import { useState } from 'react';
import { Link } from 'wouter';
import { chemicalAgents } from '../../core/chemistry/index.ts';
import { useSettings } from '../call/index.ts';
import { Button, MeasureField, Notice, NumberField, Picker, Section, useKept } from '../kit/index.ts';
import { AfterBath } from './AfterBath.tsx';
import { DetergentPart } from './DetergentPart.tsx';
import { DosePart } from './DosePart.tsx';
import { type Mixing, type MixingProps, nothingTyped } from './mixing.ts';
import { RinsePart } from './RinsePart.tsx';
import { WaterField } from './WaterField.tsx';
import './mix.css';

/** What bring a bath to a pH; salts, oxidisers and reducers are dosed by their own rules. */
const dosable = chemicalAgents
  .filter(({ kind }) => kind === 'acid' || kind === 'base')
  .map(({ agent }) => ({ value: agent, words: agent }));

function BathFields({ mixing, set }: MixingProps) {
  const { units } = useSettings();
  return (
    <div className="form">
      <MeasureField
        label="Water"
        measure="bath"
        units={units}
        least={0.1}
        most={10_000}
        value={mixing.litres}
        onChange={(litres) => set({ litres })}
      />
      <MeasureField
        label="Temperature"
        measure="temperature"
        units={units}
        least={0}
        most={60}
        value={mixing.temperatureC}
        onChange={(temperatureC) => set({ temperatureC })}
      />
      <WaterField
        label="Alkalinity of the water"
        hint="From the water supplier’s sheet; 100 mg/L CaCO₃ is soft, 250 hard."
        value={mixing.alkalinity}
        unit={mixing.alkalinityUnit}
        onChange={(alkalinity, alkalinityUnit) => set({ alkalinity, alkalinityUnit })}
        isAlkalinity
      />
      <Picker label="Agent" options={dosable} value={mixing.agent} onChange={(agent) => set({ agent })} />
      <NumberField
        label="pH wanted"
        unit="pH"
        least={1}
        most={13}
        value={mixing.targetPh}
        onChange={(targetPh) => set({ targetPh })}
      />
    </div>
  );
}

function RugFields({ mixing, set }: MixingProps) {
  const { units } = useSettings();
  return (
    <Section title="The rug">
      <div className="form">
        <div className="pad">
          <MeasureField
            label="Dry mass"
            measure="mass"
            units={units}
            least={0.1}
            most={200}
            value={mixing.massKg}
            onChange={(massKg) => set({ massKg })}
          />
          <MeasureField
            label="Area"
            measure="area"
            units={units}
            least={0.1}
            most={100}
            value={mixing.areaM2}
            onChange={(areaM2) => set({ areaM2 })}
          />
        </div>
      </div>
    </Section>
  );
}

/** Mixing and rinsing at the bench: what to weigh for a bath, and how to get it out again. */
export function MixPage() {
  const [mixing, setMixing, forget] = useKept<Mixing>('bench/mix/2', nothingTyped);
  // A field keeps a slip of the pen on show; a new round takes those away too.
  const [round, setRound] = useState(0);
  const set = (changed: Partial<Mixing>) => setMixing((before) => ({ ...before, ...changed }));
  const beginAnew = () => {
    forget();
    setRound(round + 1);
  };
  return (
    <div className="page narrow" key={round}>
      <div className="pageTop">
        <div>
          <Link className="crumb" href="/bench">
            Bench
          </Link>
          <h1>Mix and rinse</h1>
          <p className="lead">
            What to weigh for a bath, and how much water takes it out again. Nothing here is recorded.
          </p>
        </div>
        <Button tone="ghost" onPress={beginAnew}>
          Begin anew
        </Button>
      </div>
      <Section title="The bath">
        <BathFields mixing={mixing} set={set} />
      </Section>
      <Section title="The dose">
        <DosePart mixing={mixing} />
      </Section>
      <RugFields mixing={mixing} set={set} />
      <RinsePart massKg={mixing.massKg} />
      <AfterBath mixing={mixing} set={set} />
      <DetergentPart mixing={mixing} set={set} />
      <Notice tone="caution" title="Gloves and goggles.">
        <p>
          The supplier’s safety data sheet comes first; acid into water, never water into acid. Never chlorine
          bleach with an acid. Waste water as the local authority allows.
        </p>
      </Notice>
    </div>
  );
}
