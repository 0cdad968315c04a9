import { Button, dayWords, Notice, When } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { Part } from '../Part.tsx';

/** Where the rug is, who has it, and what nobody planned. */
export function CustodyPart() {
  const { standing, visit, isHere, nameOf, ask } = useDossier();
  const { quarantine, out, notes } = standing;
  return (
    <Part id="custody" title="Where it is">
      <p>
        {out === null ? (standing.place ?? 'Place not noted') : `Out at ${out.to} for ${out.purpose}`}
        {out?.backBy === undefined ? '' : `, back by ${dayWords(out.backBy)}`}
      </p>
      {quarantine !== null && (
        <Notice tone="stop" title={`In quarantine: ${quarantine.why}.`}>
          <p>
            Since <When at={quarantine.when} />, {nameOf(quarantine.by)}. It shares no floor and no tools with
            other rugs; gloves, and for mould or insecticide a respirator. {quarantine.note}
          </p>
        </Notice>
      )}
      {visit?.storage && <p>Storage is due from {dayWords(visit.storage.from)}.</p>}
      {visit?.unclaimed && <p>Unclaimed since {dayWords(visit.unclaimed.since)}.</p>}
      {visit?.incidents.map((incident) => (
        <Notice key={incident.entry} tone="caution" title={`Incident: ${incident.what}`}>
          <p>
            {incident.action} · {incident.clientTold ? 'client told' : 'client not yet told'} ·{' '}
            {nameOf(incident.by)} <When at={incident.when} />
          </p>
          {incident.told === undefined ? null : (
            <p>
              Told <When at={incident.told.when} />: {incident.told.how}
            </p>
          )}
          {incident.clientTold ? null : (
            <Button tone="ghost" onPress={() => ask({ kind: 'incident told', incident: incident.entry })}>
              The client has been told
            </Button>
          )}
        </Notice>
      ))}
      {notes.slice(-3).map((note) => (
        <p key={note.entry} className="noted">
          {note.note}{' '}
          <span className="why">
            {nameOf(note.by)}, <When at={note.when} />
          </span>
        </p>
      ))}
      <div className="buttons">
        <Button tone="ghost" onPress={() => ask({ kind: 'note' })}>
          Write a note
        </Button>
        {isHere && (
          <Button tone="ghost" onPress={() => ask({ kind: 'move' })}>
            Move it
          </Button>
        )}
        {isHere &&
          (quarantine === null ? (
            <Button tone="ghost" onPress={() => ask({ kind: 'quarantine' })}>
              Quarantine
            </Button>
          ) : (
            <Button tone="ghost" onPress={() => ask({ kind: 'release' })}>
              Release from quarantine
            </Button>
          ))}
        {visit === null ? null : (
          <Button tone="ghost" onPress={() => ask({ kind: 'incident' })}>
            Report an incident
          </Button>
        )}
      </div>
      {isHere && (
        <details>
          <summary>More</summary>
          <div className="buttons">
            {out === null ? (
              <Button tone="ghost" onPress={() => ask({ kind: 'send out' })}>
                Send it out
              </Button>
            ) : (
              <Button tone="ghost" onPress={() => ask({ kind: 'came back' })}>
                It came back
              </Button>
            )}
            <Button tone="ghost" onPress={() => ask({ kind: 'dust' })}>
              Log a dusting
            </Button>
            <Button tone="ghost" onPress={() => ask({ kind: 'storage' })}>
              Storage is due
            </Button>
            <Button tone="ghost" onPress={() => ask({ kind: 'unclaimed' })}>
              Unclaimed
            </Button>
          </div>
        </details>
      )}
    </Part>
  );
}
