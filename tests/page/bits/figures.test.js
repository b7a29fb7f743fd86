// Numbers as each language writes and reads them. A comma before decimals and no point between thousands: ISO 80000-1,
// clause 7.3 (from memory), which German practice follows (DIN 1333, from memory).

import assert from "node:assert/strict";
import { test } from "node:test";

/** The page's figures where the page speaks a language. @param {string} lang @returns {Promise<typeof import("../../../www/figures.js")>} */
async function figuresIn(lang) {
  Object.assign(globalThis, { document: { documentElement: { lang } } });
  const figures = await import(`../../../www/figures.js?${lang}`);
  assert.match(figures.decimal(0.5, 1), /^0[.,]5$/); // its formats are made now
  return figures;
}

for (const [lang, sign, other] of [["en", ".", ","], ["de", ",", "."]]) {
  test(`${lang}: numbers are written with ${sign} and read with either`, async () => {
    const { angle, decimal, exactly, fieldOf, figure, gap, mmOf, numberOf, short, tickOf, written } = await figuresIn(lang);
    const told = [decimal(-1234.5, 2), gap(0.154), gap(0.0042), angle(0.00436), exactly("a_mm", -0.3373), figure("share_fraction", 0.0042),
      figure("x_ratio", 2.5), fieldOf(12.7), tickOf(0.5), short(0.012345, 3), written(-0.25), decimal(-0.001, 2)];
    assert.deepEqual(told, ["−1234.50", "0.15\u00a0mm", "4\u00a0µm", "0.25°", "−0.3373\u00a0mm", "0.4\u00a0%", "2.50", "12.70", "0.5", "0.0123", "−0.25", "0.00"].map((text) => text.replace(".", sign)));
    for (const [text, value] of [["12.7", 12.7], ["12,7", 12.7], [" 0,3373 ", 0.3373], ["−0,5", -0.5], ["-.5", -0.5], ["1 234,5", 1234.5], ["1\u202f234", 1234], ["2e-3", 0.002]]) {
      assert.equal(numberOf(String(text)), value, `${text}`);
    }
    for (const text of ["", " ", "abc", "1,2,3", "1.234,5", "1,234.5", "0x10", "Infinity", "1-2", "--1", "5 mm"]) assert.ok(Number.isNaN(numberOf(text)), text);
    assert.equal(mmOf(`3${other}5`), 3.5, "a length takes either sign");
  });
}

test("where a point stands before decimals, a comma before three figures is no number: it may mean thousands", async () => {
  const { numberOf } = await figuresIn("en");
  assert.ok(Number.isNaN(numberOf("1,234")));
  assert.deepEqual([numberOf("0,234"), numberOf("1,2345"), numberOf("1,23")], [0.234, 1.2345, 1.23]);
});

test("a number stays on one line with its unit, and with nothing else", async () => {
  const { together } = await figuresIn("en");
  const told = "At 400 N and 5 N mm, 0.10 mm or 3 % of 100 W, 1.04 × … 1 ×; 12 Nuts, 4 in all, 7 mmx.";
  assert.equal(together(told), "At 400\u00a0N and 5\u00a0N\u00a0mm, 0.10\u00a0mm or 3\u00a0% of 100\u00a0W, 1.04\u00a0× … 1\u00a0×; 12 Nuts, 4 in all, 7 mmx.");
});
