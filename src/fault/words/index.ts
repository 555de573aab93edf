import { boardWords } from './board.ts';
import { calcWords } from './calc.ts';
import { commandWords } from './command.ts';
import { compareWords } from './compare.ts';
import { fitWords } from './fit.ts';
import { gateWords } from './gate.ts';
import { physicsWords } from './physics.ts';
import { procedureWords } from './procedure.ts';
import { quantityWords } from './quantity.ts';
import { reachWords } from './reach.ts';
import { recordWords } from './record.ts';
import { runWords } from './run.ts';
import { senseWords } from './sense.ts';
import { serverWords } from './server.ts';
import { studyWords } from './study.ts';

/** Every fault's words, one entry a code. Data in, sentences out. */
export const words = {
  ...quantityWords,
  ...studyWords,
  ...boardWords,
  ...calcWords,
  ...physicsWords,
  ...procedureWords,
  ...reachWords,
  ...recordWords,
  ...runWords,
  ...fitWords,
  ...gateWords,
  ...commandWords,
  ...compareWords,
  ...senseWords,
  ...serverWords,
};

export type FaultCode = keyof typeof words;
