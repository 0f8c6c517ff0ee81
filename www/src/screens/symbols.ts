// Sets formula texts of the core in type: Greek letters, subscripts, powers,
// fractions. Pure presentation: no value is read or changed.
import { html, nothing, type TemplateResult } from "lit-html";

const greek: Record<string, string> = {
  alpha: "α", beta: "β", gamma: "γ", delta: "δ", Delta: "Δ", epsilon: "ε", eta: "η", theta: "θ", kappa: "κ", lambda: "λ",
  mu: "μ", nu: "ν", xi: "ξ", pi: "π", rho: "ρ", sigma: "σ", tau: "τ", phi: "φ", chi: "χ", psi: "ψ", omega: "ω", Sigma: "Σ",
};

const functions = new Set(["sqrt", "abs", "min", "max", "sum", "roundup", "rounddown", "if"]);

/** A hyphen before a digit becomes a minus sign, an x between numbers a times sign. */
export function minus(text: string): string {
  return text.replace(/(^|[\s(])-(?=\d)/g, "$1−").replace(/(\w) x (?=\d)/g, "$1 × ");
}

/** m2 as m². */
export function unitText(unit: string): string {
  return unit.replace(/([a-z])2\b/g, "$1²").replace(/([a-z])3\b/g, "$1³").replace(/([a-z])4\b/g, "$1⁴").replace(/\*/g, "·");
}

/** A symbol such as eta_lo: η with subscript lo. */
export function symbol(name: string): TemplateResult {
  const [head = "", ...rest] = name.split("_");
  const letter = greek[head] ?? head;
  const sub = rest.map((part) => greek[part] ?? part).join(",");
  return html`<i>${letter}</i>${sub ? html`<sub>${sub}</sub>` : nothing}`;
}

type Shown = TemplateResult | string;

interface Token {
  text: string;
  kind: "number" | "name" | "operator";
}

/** A formula or a line of values set in type; text that is no formula stays as it is. */
export function formula(text: string): TemplateResult {
  const list = tokens(text);
  const set = list && new Setter(list).all();
  return html`<span class="math" role="math" aria-label=${text}>${set ?? minus(text)}</span>`;
}

function tokens(text: string): Token[] | null {
  const list: Token[] = [];
  const pattern = /\s*(?:(\d[\d.,]*\d|\d)|([A-Za-z_%°][\w%°]*)|(>=|<=|[-+*/^(),<>=;]))/gy;
  let at = 0;
  while (at < text.trimEnd().length) {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    if (!found) return null;
    at = pattern.lastIndex;
    if (found[1] !== undefined) list.push({ text: found[1], kind: "number" });
    else if (found[2] !== undefined) list.push({ text: found[2], kind: "name" });
    else list.push({ text: found[3] as string, kind: "operator" });
  }
  return list;
}

const shownAs: Record<string, string> = { "*": "·", "-": "−", ">=": "≥", "<=": "≤" };

/** Reads tokens by the usual precedence and sets them. */
class Setter {
  #at = 0;

  constructor(readonly list: Token[]) {}

  /** Null when the text does not read as a formula. */
  all(): Shown[] | null {
    const parts: Shown[] = [];
    try {
      while (this.#at < this.list.length) {
        parts.push(this.#sum());
        const next = this.list[this.#at];
        if (!next) break;
        if (!isOne(next, "=", ">=", "<=", "<", ">", ",", ";", "and")) return null;
        this.#at++;
        parts.push(isOne(next, ",", ";") ? html`${next.text} ` : html` <span class="rel">${shownAs[next.text] ?? next.text}</span> `);
      }
    } catch {
      return null;
    }
    return parts;
  }

  #peek(): Token | undefined {
    return this.list[this.#at];
  }

  #sum(): Shown {
    const parts: Shown[] = [this.#product()];
    for (let next = this.#peek(); next && isOne(next, "+", "-"); next = this.#peek()) {
      this.#at++;
      parts.push(html` ${shownAs[next.text] ?? next.text} `, this.#product());
    }
    return html`${parts}`;
  }

  #product(): Shown {
    let left: Shown = this.#power(this.#isNumerator());
    for (let next = this.#peek(); next && isOne(next, "*", "/"); next = this.#peek()) {
      this.#at++;
      if (next.text === "*") {
        left = html`${left}<span class="dot"> · </span>${this.#power()}`;
        continue;
      }
      left = html`<span class="frac"><span class="up">${left}</span><span class="down">${this.#power(true)}</span></span>`;
    }
    return left;
  }

  #power(bare = false): Shown {
    const base = this.#atom(bare);
    if (!isOne(this.#peek(), "^")) return base;
    this.#at++;
    return html`${base}<sup>${this.#atom(true)}</sup>`;
  }

  /** `bare`: parentheses around the whole are not needed. */
  #atom(bare: boolean): Shown {
    const token = this.#peek();
    if (!token) throw new Error("ends early");
    this.#at++;
    if (token.kind === "number") return html`<span class="nb">${token.text}${this.#unit()}</span>`;
    if (isOne(token, "-")) return html`−${this.#power()}`;
    if (isOne(token, "(")) {
      const inner = this.#list();
      return bare ? html`${inner}` : html`(${inner})`;
    }
    if (token.kind !== "name") throw new Error("unexpected " + token.text);
    if (functions.has(token.text) && isOne(this.#peek(), "(")) {
      this.#at++;
      const inner = this.#list();
      return token.text === "sqrt"
        ? html`<span class="root">√<span class="under">${inner}</span></span>`
        : html`<span class="fn">${token.text === "roundup" ? "round up" : token.text === "rounddown" ? "round down" : token.text}</span>(${inner})`;
    }
    return symbol(token.text);
  }

  /** A group that is the whole numerator needs no parentheses: is one next? */
  #isNumerator(): boolean {
    let depth = 0;
    for (let i = this.#at; i < this.list.length; i++) {
      if (isOne(this.list[i], "(")) depth++;
      if (isOne(this.list[i], ")")) depth--;
      if (depth === 0) return i > this.#at && isOne(this.list[i + 1], "/");
    }
    return false;
  }

  #list(): Shown {
    const parts: Shown[] = [this.#comparison()];
    while (isOne(this.#peek(), ",", ";")) {
      this.#at++;
      parts.push(", ", this.#comparison());
    }
    if (!isOne(this.#peek(), ")")) throw new Error("no end of group");
    this.#at++;
    return html`${parts}`;
  }

  #comparison(): Shown {
    const left = this.#sum();
    const next = this.#peek();
    if (!isOne(next, "=", ">=", "<=", "<", ">")) return left;
    this.#at++;
    return html`${left} ${shownAs[(next as Token).text] ?? (next as Token).text} ${this.#sum()}`;
  }

  /** The unit after a number: kN, m2, kN/m2. */
  #unit(): string {
    const token = this.#peek();
    if (token?.kind !== "name" || functions.has(token.text) || token.text === "and") return "";
    this.#at++;
    let unit = token.text;
    const after = this.list[this.#at + 1];
    if (isOne(this.#peek(), "/") && after?.kind === "name" && unitEnds.test(after.text) && !/_/.test(after.text)) {
      unit += "/" + after.text;
      this.#at += 2;
    }
    return " " + unitText(unit);
  }
}

const unitEnds = /^(m|mm|cm|m2|m3|mm2|s|min|h|K|t)$/;

function isOne(token: Token | undefined, ...texts: string[]): boolean {
  return token !== undefined && texts.includes(token.text);
}
