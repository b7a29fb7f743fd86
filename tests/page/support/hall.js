// The hall on projectors of three heights: letters are a fortieth of the height and edges three pixels, on the drawing and in
// the pictures of questions.

import assert from "node:assert/strict";
import { describe, test } from "node:test";
import { standing } from "./standing.js";

const SIZES = [[1024, 768], [1280, 720], [1920, 1080], [2560, 1440]];
/** Windows as wide as high, or higher: a screen that was turned, a phone. */
const TURNED = [[800, 600], [768, 1024], [390, 844]];
const STEPS = ["#v=1&on=lesson-why-so-little-2&ask=give&how=turn&at=1", "#v=1&on=lesson-the-crooked-line-4&ask=line&how=turn&at=0",
  "#v=1&on=lesson-wear-you-can-measure-2&ask=wear&how=turn&at=0", "#v=1&on=lesson-where-the-oil-goes-4&ask=reach&how=turn&at=0"];
/** A pixel of the screen more or less is none that a hall sees. */
const NEAR = 0.05;
const EDGES = ".metal, .wheel, .wear-picture :is(.part, .roller, circle.pin), .width-picture :is(.part, .layer)";

/** In the page: letters that are too small, and edges that are too thin, each as it is called. */
const wanting = (edges, near) => {
  const least = innerHeight / 40;
  const says = (element) => [...element.childNodes].some((each) => each.nodeType === Node.TEXT_NODE && each.textContent.trim());
  const shown = [...document.querySelectorAll(".stage *")].filter((each) => says(each) && each.checkVisibility() && !each.closest(".hush, select, option"));
  const sizeOf = (each) => (each instanceof SVGElement ? each.getBoundingClientRect().height / 1.1 : parseFloat(getComputedStyle(each).fontSize) * each.currentCSSZoom);
  const small = shown.filter((each) => sizeOf(each) < least - 0.5).map((each) => `${each.localName}.${each.getAttribute("class")}: ${each.textContent.slice(0, 30)} ${sizeOf(each)}`);
  const lines = [...document.querySelectorAll(".own svg")].filter((each) => each.checkVisibility() && !each.classList.contains("sample")).flatMap((svg) => [...svg.querySelectorAll(edges)]);
  const drawnAt = (svg) => svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
  const width = (each) => {
    const { strokeWidth, vectorEffect } = getComputedStyle(each);
    return parseFloat(strokeWidth) * (vectorEffect === "none" ? drawnAt(each.ownerSVGElement) : each.currentCSSZoom);
  };
  const thin = lines.filter((each) => width(each) < 3 - near).map((each) => `${each.getAttribute("class")} ${width(each)}`);
  return { small: [...new Set(small)], thin: [...new Set(thin)], count: [shown.length, lines.length] };
};
/** In the page: what stands out over the right edge of the window or of the drawing's plate. */
const outside = () => {
  const plate = document.querySelector(".plate");
  const over = (each, edge) => each.checkVisibility() && !each.closest(".hush") && each.getBoundingClientRect().right > edge + 1;
  return [...[...document.querySelectorAll(".stage *")].filter((each) => !each.closest(".own") && over(each, innerWidth)),
    ...[...plate.querySelectorAll("*")].filter((each) => over(each, plate.getBoundingClientRect().right))].map((each) => `${each.localName}.${each.getAttribute("class")} ${each.id}`);
};
/** In the page: the widest line of an edge's colour that the next painting of the drawing draws, in pixels of the page. */
const edgeOf = async () => {
  const { theme } = await import(new URL("theme.js", document.baseURI).href);
  const widths = [];
  const { stroke } = CanvasRenderingContext2D.prototype;
  CanvasRenderingContext2D.prototype.stroke = function told() {
    if (this.canvas.id === "drawing") widths.push([this.strokeStyle, this.lineWidth]);
    return stroke.call(this);
  };
  dispatchEvent(new Event("resize"));
  document.querySelector("#scrub").dispatchEvent(new Event("input", { bubbles: true }));
  await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
  CanvasRenderingContext2D.prototype.stroke = stroke;
  const pen = new OffscreenCanvas(1, 1).getContext("2d");
  pen.strokeStyle = theme()["edge-held"];
  return Math.max(...widths.filter(([colour]) => colour === pen.strokeStyle).map(([, width]) => width));
};

/**
 * @param {string} engine
 * @param {() => Promise<any>} openHand
 */
export function hallSuite(engine, openHand) {
  describe(`the hall, in ${engine}`, () => {
    const hand = standing({}, openHand);
    for (const [width, height] of SIZES) {
      test(`on ${width} × ${height} every letter and edge is as large as a hall needs`, async (t) => {
        await hand.resize({ width, height });
        for (const at of STEPS) {
          await hand.open(at);
          await hand.until(() => /^(?!Working).{9}/.test(document.querySelector(".lesson:not([hidden]) .lesson-say")?.textContent ?? ""));
          await hand.press("h");
          await hand.press(".");
          await hand.settled();
          assert.deepEqual(await hand.inside(outside), [], at);
        const { small, thin, count } = await hand.inside(wanting, EDGES, NEAR);
          assert.deepEqual([small, thin], [[], []], at);
          assert.ok(count[0] > 4 && (at.includes("ask=give") || count[1] > 1), `${at}: ${count}`);
          if (!at.includes("ask=give")) continue;
          const edge = await hand.inside(edgeOf);
          t.diagnostic(`edges of the drawing: ${edge.toFixed(2)} px`);
          assert.ok(edge >= 3 - NEAR, `${edge}`);
        }
      });
    }

    for (const [width, height] of TURNED) {
      test(`on ${width} × ${height} nothing stands out over an edge, before an answer and after`, async () => {
        await hand.resize({ width, height });
        await hand.open("#v=1&on=lesson-why-so-little-1&ask=give&how=turn&at=0");
        await hand.until(() => document.querySelector(".lesson-guess fieldset"));
        await hand.press("h");
        assert.deepEqual(await hand.inside(outside), []);
        await hand.press(".");
        await hand.until(() => document.querySelector(".lesson-because")?.textContent);
        assert.deepEqual(await hand.inside(outside), []);
      });
    }
  });
}
