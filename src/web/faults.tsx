import { type Fault, sayFault } from '../fault/fault.ts';

/** Faults with their places, as the command line shows them: the line, what to look at, what was expected, what to do. */
export function FaultList({ faults }: { faults: readonly Fault[] }) {
  return (
    <ol class="faults">
      {faults.map((fault, at) => {
        const { found, expected, remedy } = sayFault(fault);
        return (
          <li key={at}>
            <p class="fault-found">{found}</p>
            {fault.place && <FaultPlace place={fault.place} />}
            <dl>
              {expected && (
                <>
                  <dt>expected</dt>
                  <dd>{expected}</dd>
                </>
              )}
              {remedy && (
                <>
                  <dt>do</dt>
                  <dd>{remedy}</dd>
                </>
              )}
            </dl>
          </li>
        );
      })}
    </ol>
  );
}

function FaultPlace({ place }: { place: NonNullable<Fault['place']> }) {
  const start = place.column - 1;
  const end = start + Math.max(1, place.length);
  return (
    <figure class="place">
      <figcaption>
        {place.file}, line {place.line}, column {place.column}
      </figcaption>
      <pre>
        <span class="line-number">{place.line}</span> {place.text.slice(Math.max(0, start - 60), start)}
        <mark>{place.text.slice(start, end) || ' '}</mark>
        {place.text.slice(end, end + 120)}
      </pre>
    </figure>
  );
}
