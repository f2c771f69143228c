import type { Turn } from "../../../lock/dial";
import type { LastReading, ZeroReading } from "../../../zeroing/zeroingMachine";
import { ARC, chevrons, type Socket, sideArc, sockets } from "./socketGeometry";

interface SideProps {
  readonly side: Turn;
  readonly readings: readonly ZeroReading[];
  readonly wanted: number;
  /** Whether its series is under way, or has been closed. */
  readonly isOpen: boolean;
  readonly isClosed: boolean;
  /** Whether the last reading of this side was refused. */
  readonly isRefused: boolean;
}

function Place({ socket, isRefused }: { readonly socket: Socket; readonly isRefused: boolean }) {
  const { x, y, peg } = socket;
  return (
    <>
      <circle
        className={socket.isNext ? "fill-plate stroke-accent" : "fill-plate stroke-line"}
        strokeWidth={socket.isNext ? 2.4 : 1.6}
        cx={x}
        cy={y}
        r={8}
      />
      {peg !== null && (
        <>
          <line className="stroke-ink" strokeWidth={2} x1={x} y1={y} x2={peg.x} y2={peg.y} />
          <circle className="socket-peg fill-ink" cx={peg.x} cy={peg.y} r={6} />
        </>
      )}
      {socket.isNext && isRefused && (
        <g className="socket-refused fill-none stroke-ink" strokeWidth={2.2} transform={`translate(${x} ${y})`}>
          <circle r={6} />
          <path d="M -9 -9 L 9 9" />
        </g>
      )}
    </>
  );
}

/**
 * The sockets of one side on their arc, with its name: outlines are stops wanted, pegs stops recorded, a struck peg one
 * that did not count, a bar a side that is closed. A peg beyond the arc was left of zero, one inside it right of zero.
 */
function Side({ side, readings, wanted, isOpen, isClosed, isRefused }: SideProps) {
  const places = sockets(side, readings, wanted, isOpen);
  return (
    <g>
      <path className="fill-none stroke-hair" strokeWidth={1.5} d={sideArc(side, ARC, places.length)} />
      <text
        className="sockets-name text-body fill-ink phone:text-title"
        x={side === "right" ? 306 : -306}
        y={240}
        textAnchor={side === "right" ? "end" : "start"}
      >
        turning {side}
        <tspan x={side === "right" ? 306 : -306} dy="1.1em">
          {isClosed ? "closed" : `${readings.length} of ${wanted} stops`}
        </tspan>
      </text>
      {places.map((socket) => (
        <Place key={socket.key} socket={socket} isRefused={isRefused} />
      ))}
      {isClosed && (
        <path
          className="sockets-bar fill-none stroke-ink"
          strokeWidth={5}
          strokeLinecap="round"
          d={sideArc(side, ARC - 22, places.length)}
        />
      )}
      {isOpen &&
        chevrons(side, places.length).map(({ angle, flip }, k) => (
          <g key={angle} transform={`rotate(${angle}) translate(0 ${-ARC}) scale(${flip} 1)`}>
            <path className={`sockets-chevron fill-none stroke-accent step-${k}`} d="M -4 -7 L 4 0 L -4 7" />
          </g>
        ))}
    </g>
  );
}

interface SocketsProps {
  readonly accepted: Readonly<Record<Turn, readonly ZeroReading[]>>;
  readonly wanted: Readonly<Record<Turn, number>>;
  readonly asked: Turn | null;
  readonly isSet: boolean;
  readonly order: readonly [Turn, Turn];
  readonly last: LastReading | null;
}

/** Two arcs of sockets beside the ring, one a side: what is wanted, what counted and how far off, what did not count. */
export function Sockets({ accepted, wanted, asked, isSet, order, last }: SocketsProps) {
  return order.map((side, index) => (
    <Side
      key={side}
      side={side}
      readings={accepted[side]}
      wanted={wanted[side]}
      isOpen={asked === side}
      isClosed={isSet || (index === 0 && asked === order[1])}
      isRefused={last !== null && last.refusal !== null && last.side === side && asked === side}
    />
  ));
}
