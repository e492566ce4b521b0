"""How the page looks, on a screen, on a telephone and on paper: black on white, no colour needed.

Sizes on paper are in points. The type is never under 8 point; only the raised source numbers
and the list of sources are smaller. A short sheet is set larger than a long one. One face that
many machines fall back on is far wider and taller than the others at the same size, and so is
brought to theirs.
"""

from __future__ import annotations

from typing import Final

FACES: Final = (
    '"Helvetica Neue", Helvetica, Arial, "Liberation Sans", "Noto Sans", "DejaVu Sans Condensed", '
    '"Wide Sans", sans-serif'
)
STYLE: Final = (
    """
@font-face{font-family:"Wide Sans";src:local("DejaVu Sans");size-adjust:94%}
@font-face{font-family:"Wide Sans";src:local("DejaVu Sans Bold");font-weight:bold;size-adjust:94%}
*{box-sizing:border-box}
html{-webkit-text-size-adjust:100%;text-size-adjust:100%}
body{margin:0 auto;padding:1rem;max-width:64rem;background:#fff;color:#000;
 font:1rem/1.4 FACES;overflow-wrap:break-word;hyphens:auto}
h1,h2,h3{line-height:1.2;margin:0;break-after:avoid;hyphens:manual}
h1{font-size:1.5em}
h2{font-size:1.15em;margin:1.1em 0 .35em;padding:.1em 0;border-top:2px solid #000}
h3{font-size:1em;margin:.6em 0 0;display:inline}
p,ul,ol,dl,dd,figure{margin:0;padding:0}
ul,ol{list-style:none}
sup{font-size:.72em;line-height:0;vertical-align:.35em;white-space:nowrap}
sup a,.sources a{color:inherit;text-decoration:none}
a:focus-visible,:target{outline:2px solid #000;outline-offset:1px}
.about{font-weight:normal}
.sort{font-weight:bold;border:1px solid #000;padding:0 .25em;white-space:nowrap}
.item{margin:0 0 .45em;break-inside:avoid}
.conflicts li{padding-left:1.3em;position:relative}
.conflicts .n{position:absolute;left:0;font-weight:bold}
.do{padding-left:.6em;border-left:3px solid #000;margin:.1em 0}
.conflicts .told{display:inline}
.label{font-weight:bold}
.tests li{padding-left:1.5em;position:relative}
.box{position:absolute;left:0;top:.2em;width:1em;height:1em;border:1.5px solid #000}
table{border-collapse:collapse;width:100%}
caption{text-align:left}
th,td{text-align:left;vertical-align:top;padding:.2em .4em;border-bottom:1px solid #777}
thead th{border-bottom:2px solid #000}
tbody{break-inside:avoid}
thead th:nth-child(1){width:16%}thead th:nth-child(2){width:13%}
thead th:nth-child(3){width:25%}thead th:nth-child(4){width:18%}
tbody tr.more th,tbody tr.more td{border-bottom:1px solid #777}
tbody tr.has-more td{border-bottom:0}
.every{border:2px solid #000;padding:.2em .4em;margin:0 0 .4em}
figure{break-inside:avoid}
svg{display:block;width:100%;max-width:36rem;height:auto}
figcaption{font-size:.9em}
.sources{font-size:.85em}
.sources li{margin:.1em 0}
.close{margin-top:.2em}
nav,form{margin:0 0 1em}
textarea,input,select,button{font:inherit;color:inherit;max-width:100%}
textarea{width:100%;border:1px solid #000;padding:.3em}
button{border:2px solid #000;background:#fff;padding:.3em 1em}
fieldset{border:1px solid #000;margin:0 0 1em;padding:.6em .8em;min-width:0}
legend{font-weight:bold;padding:0 .3em}
.hint{margin:.2em 0 .4em}
.errors{border:3px solid #000;padding:.6em .8em;margin:0 0 1em}
.errors li{margin:.2em 0}
@media screen and (max-width:46rem){
 thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
 table,tbody,tr,th,td{display:block;width:auto}
 tbody{border-bottom:1px solid #000;padding:.4em 0}
 tbody th,tbody td,tbody tr.more td{border:0;padding:.1em 0}
 td[data-label]::before{content:attr(data-label) ": ";font-weight:bold}
}
@media print{
 body{padding:0;max-width:none;line-height:1.12;hyphens:auto}
 .large{font-size:8pt}.medium{font-size:9pt}.small{font-size:10pt}
 .columns{columns:2;column-gap:4.5mm;column-rule:.5pt solid #777}
 h1{font-size:1.6em}
 h2{margin:.4em 0 .1em;font-size:1.1em;border-top:1pt solid #000}
 .columns>section:first-child h2{margin-top:0}
 .seams+.columns{margin-top:.5em}
 table{margin-bottom:.4em}
 .item{margin:0 0 .14em;break-inside:auto;orphans:2;widows:2}
 .tests .item{break-inside:avoid}
 sup{font-size:6pt}
 th,td{padding:.08em .35em}
 .every{border-width:1pt;margin:0 0 .2em;break-inside:avoid}
 svg{max-width:none}
 .sources{font-size:6.5pt;line-height:1.15}
 .sources ol{display:block}
 .sources li{display:inline}
 .sources li::after{content:" · "}
 .screen{display:none}
}
@page{margin:7mm 8mm 8mm;@bottom-right{content:counter(page) " / " counter(pages);font-size:7pt}}
"""
).replace("FACES", FACES)
"""Everything but the size of the paper."""
PAPER: Final = {"metric": "@page{size:A4}", "us": "@page{size:letter;margin:6mm 7mm 7mm}"}
