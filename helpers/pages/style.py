"""The style sheet of all pages, and of the controls that stand among them."""

STYLE = """<style>
.cw-page {max-width: 46rem; line-height: 1.45; padding: .2rem 0 .2rem 6px;}
.cw-controls {margin-left: 4px;}
.cw-page p {margin: .3rem 0;}
.cw-heading {font-weight: 600; opacity: .8;}
.cw-page ul.cw-options {list-style: none; margin: .2rem 0; padding-left: 1rem;}
.cw-hint {opacity: .8;}
.cw-folded {margin: .3rem 0;}
.cw-folded summary {cursor: pointer;}
.cw-danger {border: 2px solid currentColor; border-left-width: 10px; padding: .3rem .6rem;
  font-weight: 600;}
.cw-verdict {border-left: 6px solid currentColor; padding-left: .6rem;}
.cw-working, .cw-code {border-left: 2px dotted currentColor; padding-left: .6rem;}
.cw-controls .widget-radio-box label, .cw-controls .widget-checkbox label {white-space: normal;
  height: auto; line-height: 1.4; padding: .15rem 0;}
.cw-controls .widget-radio-box label {display: flex; flex-direction: row-reverse;
  justify-content: flex-end; align-items: flex-start; gap: .5rem;}
.cw-controls .widget-radio-box label input {flex: none; float: none; margin: 0;}
.cw-controls .widget-radio-box, .cw-controls .widget-radio, .cw-controls .widget-checkbox {
  width: auto; max-width: 46rem; height: auto;}
.cw-controls .widget-checkbox .widget-label-basic {width: auto; height: auto; align-items: start;}
.cw-controls :focus-visible {outline: 3px solid currentColor; outline-offset: 2px;}
.cw-controls .widget-html-content {line-height: 1.45; font-size: var(--jp-content-font-size1);}
.cw-controls code {background: var(--jp-layout-color2); padding: 1px 5px;}
.cw-told {margin-top: .3rem;}
.cw-controls .cw-options {display: none;}
@media (max-width: 60rem) {.cw-order .cw-options {display: block;}}
.jp-OutputArea:has(.cw-page) .jp-OutputArea-output.jupyter-widgets:not(:has(*)) {
  display: none;}
.cw-controls .widget-dropdown select {max-width: 24rem;}
.cw-controls .widget-select {height: auto;}
.cw-controls .widget-select select {width: 100%; max-width: none; height: auto; flex: none;}
</style>"""
