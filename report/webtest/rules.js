// Rules that a page must keep so that everybody can read and use it. Returns a line for each fault.
const faults = [];
const fault = (rule, e, more) => faults.push(rule + ": <" + e.tagName.toLowerCase() + "> " + ((more ?? "") || (e.textContent ?? "").trim().slice(0, 40)));
const all = selector => Array.from(document.querySelectorAll(selector));
const seen = e => e.checkVisibility({visibilityProperty: true}) && e.getClientRects().length > 0;

// The page has a language, a title and one main part.
if (!document.documentElement.lang) faults.push("language: the page states none");
if (!document.title.trim()) faults.push("title: the page has none");
if (all("main, [role=main]").length !== 1) faults.push("main: the page has " + all("main, [role=main]").length);
const ids = all("[id]").map(e => e.id);
for (const e of all("[id]")) if (ids.filter(id => id === e.id).length > 1) fault("id", e, e.id + " is not the only one");

// Names: of what is used, and of what is seen.
const byId = (e, attribute) => (e.getAttribute(attribute) ?? "").split(/\s+/).filter(Boolean).map(id => document.getElementById(id));
const name = e => {
	const by = byId(e, "aria-labelledby").map(o => o?.textContent ?? "").join(" ").trim();
	const own = ["IMG"].includes(e.tagName) ? e.alt : ["INPUT", "SELECT", "TEXTAREA", "METER", "PROGRESS"].includes(e.tagName)
		? Array.from(e.labels ?? []).map(l => l.textContent).join(" ") + (["submit", "button", "reset"].includes(e.type) ? e.value : "")
		: e.textContent + Array.from(e.querySelectorAll("img")).map(i => i.alt).join(" ");
	return (by || (e.getAttribute("aria-label") ?? "").trim() || own.trim() || (e.title ?? "").trim());
};
for (const e of all("button, a[href], summary, [role=button], [role=link], [role=tab], [role=slider], [role=checkbox], [role=switch]")) if (!name(e)) fault("name", e, "it has none");
for (const e of all("img, [role=img], canvas, figure > svg")) {
	const named = e.tagName === "IMG" ? (e.alt || e.getAttribute("aria-label") || "").trim() : (e.getAttribute("aria-label") ?? "").trim() || byId(e, "aria-labelledby").length || e.querySelector?.(":scope > title");
	if (!named && e.getAttribute("aria-hidden") !== "true") fault("picture", e, "it has no words");
}
for (const e of all("input:not([type=hidden]), select, textarea")) if (!name(e)) fault("label", e, (e.type || "") + " has none");
for (const e of all("details")) if (e.firstElementChild?.tagName !== "SUMMARY") fault("name", e, "its first part is no summary");
for (const e of all("fieldset")) if (!e.querySelector(":scope > legend")?.textContent.trim()) fault("name", e, "it has no legend");

// Roles: those that there are, with what they refer to; lists and tables are what they seem.
const roles = new Set("alert application article banner button cell checkbox columnheader complementary contentinfo definition dialog document figure form grid gridcell group heading img link list listbox listitem log main math menu menubar menuitem meter navigation none note option presentation progressbar radio radiogroup region row rowgroup rowheader scrollbar search separator slider spinbutton status switch tab table tablist tabpanel term textbox timer toolbar tooltip tree treeitem".split(" "));
for (const e of all("[role]")) if (!roles.has(e.getAttribute("role"))) fault("role", e, "there is no role " + e.getAttribute("role"));
for (const attribute of ["aria-labelledby", "aria-describedby", "aria-controls", "for"]) for (const e of all("[" + attribute + "]")) if (byId(e, attribute).includes(null)) fault("role", e, attribute + " refers to nothing");
for (const e of all("li")) if (!e.closest("ul, ol, [role=list]")) fault("role", e, "an item of no list");
for (const e of all("dt, dd")) if (!e.closest("dl")) fault("role", e, "a term of no list");
for (const t of all("table:not([role=presentation])")) {
	if (!t.querySelector("thead th")) fault("role", t, "a table without heads");
	for (const h of t.querySelectorAll("th")) if (!h.scope) fault("role", h, "a head of nothing: " + h.textContent);
}

// Headings: one of the first level, first, and no level left out.
let level = 0;
const headings = all("h1, h2, h3, h4, h5, h6");
if (headings.filter(h => h.tagName === "H1").length !== 1) faults.push("heading: the page has " + headings.filter(h => h.tagName === "H1").length + " of the first level");
for (const h of headings) {
	const next = Number(h.tagName[1]);
	if (next > level + 1) fault("heading", h, "level " + next + " follows level " + level + ": " + h.textContent);
	if (!h.textContent.trim()) fault("heading", h, "it is empty");
	level = next;
}

// Contrast of every text with what it stands on, by the colours as they are computed (WCAG 2, 1.4.3).
const canvas = new OffscreenCanvas(1, 1).getContext("2d", {willReadFrequently: true});
const rgba = colour => {
	canvas.clearRect(0, 0, 1, 1);
	canvas.fillStyle = colour;
	canvas.fillRect(0, 0, 1, 1);
	const [r, g, b, a] = canvas.getImageData(0, 0, 1, 1).data;
	return [r, g, b, a / 255];
};
const over = (top, below) => [0, 1, 2].map(i => top[i] * top[3] + below[i] * (1 - top[3])).concat(1);
const behind = e => {
	const layers = [];
	for (; e; e = e.parentElement) layers.unshift(rgba(getComputedStyle(e).backgroundColor));
	return layers.reduce((below, top) => over(top, below), [255, 255, 255, 1]);
};
const light = c => [0, 1, 2].map(i => c[i] / 255).map(x => x <= 0.04045 ? x / 12.92 : ((x + 0.055) / 1.055) ** 2.4).reduce((sum, x, i) => sum + x * [0.2126, 0.7152, 0.0722][i], 0);
const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
const looked = new Set();
for (let n = walk.nextNode(); n; n = walk.nextNode()) {
	const e = n.parentElement;
	if (!n.data.trim() || looked.has(e) || ["STYLE", "SCRIPT", "TITLE"].includes(e.tagName) || !seen(e)) continue;
	looked.add(e);
	let see = 1;
	for (let o = e; o; o = o.parentElement) see *= Number(getComputedStyle(o).opacity);
	const ground = behind(e), ink = rgba(e.closest("svg") ? getComputedStyle(e).fill : getComputedStyle(e).color);
	ink[3] *= see;
	const [a, b] = [light(over(ink, ground)), light(ground)].sort((x, y) => y - x);
	const ratio = (a + 0.05) / (b + 0.05);
	if (ratio < 4.5) fault("contrast", e, ratio.toFixed(2) + " of " + n.data.trim().slice(0, 40));
}

// Focus: in the order of the page, which is that of reading, and seen.
for (const e of all("[tabindex]")) if (e.tabIndex > 0) fault("focus", e, "it goes first, by its number " + e.tabIndex);
const stops = all("a[href], button, input:not([type=hidden]), select, textarea, summary, [tabindex]").filter(e => e.tabIndex >= 0 && !e.disabled && seen(e));
for (const [i, e] of stops.entries()) {
	const [box, before] = [e.getBoundingClientRect(), i > 0 ? stops[i - 1].getBoundingClientRect() : null];
	if (before && (box.bottom <= before.top || box.top < before.bottom && box.right <= before.left)) fault("focus", e, "it stands before what goes before it: " + name(e));
	e.focus({preventScroll: true});
	if (document.activeElement !== e) fault("focus", e, "it takes none: " + name(e));
	if (e.matches(":focus-visible") && getComputedStyle(e).outlineStyle === "none" && getComputedStyle(e).boxShadow === "none") fault("focus", e, "it is not seen: " + name(e));
	e.blur();
}
for (const e of all("[onclick]")) if (!["A", "BUTTON", "INPUT", "SUMMARY", "LABEL"].includes(e.tagName) && e.tabIndex < 0) fault("focus", e, "it is used by the pointer alone");
return faults;
