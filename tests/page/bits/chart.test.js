// Where a chart puts its ticks and the names of its marks.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, test } from "node:test";
import { ROOT } from "../support/server.js";

const text = readFileSync(join(ROOT, "www/ticks.js"));
const { placed, ticksOf, widthOf } = await import(`data:text/javascript;base64,${text.toString("base64")}`);

/** Numbers from 0 to 1, the same ones in every run (a linear congruence, Knuth's MMIX factors). */
function numbers() {
  let state = 7n;
  return () => {
    state = (state * 6364136223846793005n + 1442695040888963407n) & 0xffffffffffffffffn;
    return Number(state >> 11n) / 2 ** 53;
  };
}

describe("the ticks of an axis", () => {
  const write = String;

  test("stand at round values between its ends, both of them where they are round", () => {
    assert.deepEqual(ticksOf({ from: 0, to: 10, write }, 600, 100), [0, 2, 4, 6, 8, 10]);
    assert.deepEqual(ticksOf({ from: 1, to: 5, write }, 200, 45), [1, 2, 3, 4, 5]);
    assert.deepEqual(ticksOf({ from: -0.03, to: 0.03, write }, 300, 90).map((each) => Number(each.toFixed(9))), [-0.02, 0, 0.02]);
  });

  test("are round in inches where inches are read", () => {
    const inches = ticksOf({ from: 0, to: 127, round: 25.4, write: (mm) => String(mm / 25.4) }, 400, 90).map((mm) => mm / 25.4);
    assert.deepEqual(inches, [0, 2, 4]);
  });

  test("keep apart whatever their texts", () => {
    const next = numbers();
    for (let tries = 0; tries < 500; tries++) {
      const axis = { from: 100 * (next() - 0.5), to: 0, write: (value) => value.toFixed(Math.floor(9 * next())) };
      axis.to = axis.from + 10 ** (6 * next() - 3);
      const px = 150 + 1000 * next();
      const decimals = Math.floor(6 * next());
      const write = (value) => value.toFixed(decimals);
      const values = ticksOf({ ...axis, write }, px);
      const at = (value) => ((value - axis.from) / (axis.to - axis.from)) * px;
      values.slice(1).forEach((value, index) =>
        assert.ok(at(value) - at(values[index]) >= Math.max(widthOf(write(value)), widthOf(write(values[index]))), `${values}`));
    }
  });

  test("an axis without length has one", () => {
    assert.deepEqual(ticksOf({ from: 2, to: 2, write }, 300), [2]);
  });
});

describe("the names of marks", () => {
  test("never lie on each other and stay on the sheet", () => {
    const next = numbers();
    for (let tries = 0; tries < 2000; tries++) {
      const width = 280 + 1000 * next();
      const marks = Array.from({ length: 1 + Math.floor(5 * next()) }, () => ({ x: width * next(), width: 30 + 110 * next() }));
      const names = placed(marks, width);
      names.forEach((a, i) => {
        assert.ok(a.left >= 0 && a.right <= width, `${JSON.stringify(a)} on ${width}`);
        names.slice(0, i).forEach((b) => assert.ok(a.row !== b.row || a.right <= b.left || b.right <= a.left, JSON.stringify([a, b])));
      });
    }
  });

  test("a name turns to the other side of its stem where a stem would run through it", () => {
    const [shafts, replace, tips] = placed([{ x: 127, width: 119 }, { x: 232, width: 105 }, { x: 295, width: 154 }], 342);
    assert.deepEqual([replace, tips].map(({ anchor }) => anchor), ["end", "end"]);
    for (const [name, stem] of [[replace, tips], [shafts, replace], [shafts, tips]]) {
      assert.ok(stem.row < name.row || stem.x <= name.left || stem.x >= name.right, JSON.stringify([name, stem]));
    }
  });

  test("a name takes no more rows than it must", () => {
    assert.deepEqual(placed([{ x: 40, width: 80 }, { x: 300, width: 80 }], 600).map(({ row }) => row), [0, 0]);
    assert.deepEqual(placed([{ x: 40, width: 80 }, { x: 60, width: 80 }], 600).map(({ row }) => row), [1, 0]);
  });
});
