"""The looks of the mark book's page: light and dark, on screen and on paper. Knows no content."""

STYLE = """
:root { color-scheme: light dark; --face: #fff; --ink: #1c1d20; --soft: #5b5f66; --rule: #c9ccd1;
  --band: #f3f4f6; --link: #1d4f91; --alarm: #a11515; --alarm-face: #fdeeee;
  --full: #1f5f4d; --on-full: #fff; --part: #8fc1b0; --none: #f1e3c4; --helped: #d9d2ee; }
@media (prefers-color-scheme: dark) { :root { --face: #17191d; --ink: #e9e8e4; --soft: #a9adb5;
  --rule: #454a52; --band: #22252b; --link: #9cc3ff; --alarm: #ff9d94; --alarm-face: #3a1c1c;
  --full: #5fd0ae; --on-full: #0d1f19; --part: #2f6d5b; --none: #4d4229; --helped: #453c63; } }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1rem 1.25rem 4rem; max-width: 76rem; background: var(--face);
  color: var(--ink); font: 1rem/1.5 system-ui, sans-serif; }
h1 { font-size: 1.8rem; margin: .5rem 0 .25rem; }
h2 { font-size: 1.3rem; margin: 2.5rem 0 .5rem; padding-top: .5rem; border-top: 2px solid
  var(--rule); }
h3 { font-size: 1.1rem; margin: 2rem 0 .5rem; }
p { max-width: 48rem; margin: .4rem 0 .8rem; }
a { color: var(--link); }
:focus-visible { outline: 3px solid var(--link); outline-offset: 2px; }
.skip { position: absolute; left: -99rem; }
.skip:focus { left: 1rem; top: .5rem; background: var(--face); padding: .3rem .6rem; }
nav ul { display: flex; flex-wrap: wrap; gap: .3rem 1.2rem; padding: 0; margin: .8rem 0;
  list-style: none; }
.caution { border: 2px solid var(--alarm); background: var(--alarm-face); border-radius: .4rem;
  padding: .6rem 1rem; margin: 1rem 0; max-width: 48rem; }
.caution p { margin: 0; }
.scroll { overflow-x: auto; margin: .5rem 0 1rem; }
table { border-collapse: collapse; font-variant-numeric: tabular-nums; }
th, td { border: 1px solid var(--rule); padding: .2rem .55rem; text-align: left; vertical-align:
  top; }
thead th { background: var(--band); }
th small { display: block; font-weight: normal; color: var(--soft); }
tbody th small { white-space: normal; max-width: 15rem; }
.legend { max-width: none; font-size: .85rem; color: var(--soft); }
tbody th { font-weight: 600; white-space: nowrap; background: var(--face); position: sticky; left:
  0; }
td.number { text-align: right; padding: .2rem .4rem; }
td.number, td.short, .id, .legend b { white-space: nowrap; }
td.words { min-width: 12rem; overflow-wrap: anywhere; }
.marks table { font-size: .8rem; }
.marks th, .marks td { padding: .2rem .3rem; }
.marks td { text-align: center; }
.alarm { color: var(--alarm); font-weight: 700; }
.s-full { background: var(--full); color: var(--on-full); }
.s-part { background: var(--part); }
.s-none { background: var(--none); }
.s-helped { background: var(--helped); }
.s-danger { background: var(--alarm-face); color: var(--alarm); font-weight: 700;
  outline: 2px solid var(--alarm); outline-offset: -2px; }
.s-blank { color: var(--soft); }
.key { display: flex; flex-wrap: wrap; gap: .3rem 1.4rem; padding: 0; margin: .6rem 0; list-style:
  none; }
.key b { display: inline-block; min-width: 1.8em; text-align: center; font-weight: inherit;
  border: 1px solid var(--rule); }
@page { size: landscape; margin: 12mm; }
@media print { * { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
  body { max-width: none; padding: 0; font-size: 10pt; }
  nav, .skip { display: none; }
  .scroll { overflow: visible; }
  tr, p, .caution, .key, .marks { break-inside: avoid; }
  h2, h3, p, .key { break-after: avoid; }
  table, .marks table { font-size: 8pt; }
  .legend { font-size: 7.5pt; line-height: 1.25; margin: .2rem 0; }
  tbody th { position: static; }
  th, td, .marks th, .marks td { padding: .05rem .2rem; }
  td.words { min-width: 0; } }
"""
