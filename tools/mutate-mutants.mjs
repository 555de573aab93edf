// The changes that a mutation run makes to a source file: each one small, each one wrong.
import ts from 'typescript';

const swaps = new Map([
  [ts.SyntaxKind.PlusToken, '-'],
  [ts.SyntaxKind.MinusToken, '+'],
  [ts.SyntaxKind.AsteriskToken, '/'],
  [ts.SyntaxKind.SlashToken, '*'],
  [ts.SyntaxKind.PercentToken, '*'],
  [ts.SyntaxKind.LessThanToken, '<='],
  [ts.SyntaxKind.LessThanEqualsToken, '<'],
  [ts.SyntaxKind.GreaterThanToken, '>='],
  [ts.SyntaxKind.GreaterThanEqualsToken, '>'],
  [ts.SyntaxKind.PlusEqualsToken, '-='],
  [ts.SyntaxKind.MinusEqualsToken, '+='],
  [ts.SyntaxKind.AsteriskEqualsToken, '/='],
  [ts.SyntaxKind.SlashEqualsToken, '*='],
]);

const functionSwaps = {
  sqrt: 'cbrt',
  cbrt: 'sqrt',
  exp: 'expm1',
  expm1: 'exp',
  log: 'log1p',
  log1p: 'log',
  log10: 'log2',
  sin: 'cos',
  cos: 'sin',
  tan: 'sin',
  sinh: 'cosh',
  cosh: 'sinh',
  tanh: 'atan',
  atan: 'tanh',
  min: 'max',
  max: 'min',
  floor: 'ceil',
  ceil: 'floor',
  round: 'floor',
  hypot: 'max',
};

/** All mutants of some files: `{ file, line, key, change, start, end, text }`. `text` replaces what stands from `start` to `end`. */
export function findMutants(files) {
  const program = ts.createProgram(files, {
    target: ts.ScriptTarget.ES2023,
    module: ts.ModuleKind.NodeNext,
    strict: true,
    allowImportingTsExtensions: true,
    noEmit: true,
    skipLibCheck: true,
    types: [],
  });
  const checker = program.getTypeChecker();
  return files.flatMap((file) => mutantsOf(program.getSourceFile(file), file, checker));
}

function mutantsOf(source, file, checker) {
  const found = [];
  const seen = new Map();

  function add(node, change, text, start = node.getStart(source), end = node.getEnd()) {
    const { line } = source.getLineAndCharacterOfPosition(start);
    const [from, to] = [source.getPositionOfLineAndCharacter(line, 0), source.text.indexOf('\n', start)];
    const key = `${file} | ${source.text.slice(from, to < 0 ? undefined : to).trim()} | ${change}`;
    const nth = (seen.get(key) ?? 0) + 1;
    seen.set(key, nth);
    found.push({ file, line: line + 1, key: nth === 1 ? key : `${key} | ${nth}`, change, start, end, text });
  }

  function isNumber(node) {
    return (checker.getTypeAtLocation(node).flags & ts.TypeFlags.NumberLike) !== 0;
  }

  function visit(node) {
    if (ts.isTypeNode(node) || ts.isImportDeclaration(node) || ts.isInterfaceDeclaration(node)) return;
    if (ts.isBinaryExpression(node)) visitBinary(node);
    else if (ts.isNumericLiteral(node)) visitNumber(node);
    else if (ts.isPrefixUnaryExpression(node) && node.operator === ts.SyntaxKind.MinusToken)
      add(node, `${shown(node)} without its sign`, `(${node.operand.getText(source)})`);
    else if (ts.isCallExpression(node)) visitCall(node);
    else if (ts.isReturnStatement(node) && node.expression && isNumber(node.expression))
      addFactor(node.expression, 'result × 1.01');
    if (ts.isArrowFunction(node) && !ts.isBlock(node.body) && isNumber(node.body))
      addFactor(node.body, 'result × 1.01');
    ts.forEachChild(node, visit);
  }

  function addFactor(node, change) {
    add(node, change, `(${node.getText(source)}) * 1.01`);
  }

  function visitBinary({ left, operatorToken, right }) {
    const { kind } = operatorToken;
    if (kind === ts.SyntaxKind.AsteriskAsteriskToken)
      add(operatorToken, `no power of ${shown(right)}`, '', left.getEnd(), right.getEnd());
    const swap = swaps.get(kind);
    if (swap && isNumber(left)) add(operatorToken, `${operatorToken.getText(source)} → ${swap}`, swap);
  }

  function visitNumber(node) {
    const value = Number(node.text);
    if (value === 0) return;
    add(node, `${shown(node)} × 1.01`, `${Number((value * 1.01).toPrecision(15))}`);
  }

  function visitCall({ expression }) {
    if (!ts.isPropertyAccessExpression(expression) || expression.expression.getText(source) !== 'Math') return;
    const { text } = expression.name;
    if (text in functionSwaps) add(expression.name, `${text} → ${functionSwaps[text]}`, functionSwaps[text]);
    else if (text === 'abs' || text === 'sign') add(expression, `no ${text}`, '');
  }

  function shown(node) {
    return node.getText(source).replace(/\s+/g, ' ').slice(0, 40);
  }

  visit(source);
  return found;
}
