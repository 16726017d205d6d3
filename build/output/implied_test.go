package output

import (
	"strings"
	"testing"
)

// Ends that HTML implies are let out, and only where what follows implies them.
// Source: HTML Standard (WHATWG), 13.1.2.4 Optional tags.
func TestSingleLeavesImpliedEndsOut(t *testing.T) {
	for inside, want := range map[string]string{
		`<table><thead><tr><th>a</th><td>b</td></tr></thead><tbody><tr><td>c</td></tr><tr><td>d</td></tr></tbody></table>`: `<table><thead><tr><th>a<td>b</thead><tbody><tr><td>c<tr><td>d</tbody></table>`,
		`<ol><li>a</li><li><ul><li>b</li></ul></li></ol>`:                                                                  `<ol><li>a</li><li><ul><li>b</li></ul></li></ol>`,
		`<dl><dt>a</dt><dd>b</dd><dt>c</dt><dd>d</dd></dl>`:                                                                `<dl><dt>a<dd>b<dt>c<dd>d</dl>`,
		`<p>a</p><p>b</p><h2>c</h2>`:                                                                                       `<p>a</p><p>b</p><h2>c</h2>`,
		// A space after a cell would be taken into it.
		`<td>a</td> `:                 `<td>a</td> `,
		`<svg><text>a</text></svg>`:   `<svg><text>a</text></svg>`,
		`<tr><td>a</td><!-- --></tr>`: `<tr><td>a</td><!-- --></tr>`,
		// One word needs no quotes in a table or a drawing; two words, a name and other
		// elements keep them.
		`<tr role="row"><th scope="col" id="x" class="a b">c</th></tr>`: `<tr role=row><th scope=col id="index/x" class="a b">c</tr>`,
		`<td role="cell" data-label="Day’s">a</td>`:                     `<td role=cell data-label="Day’s">a</td>`,
		// Where a tag ends itself its last value would take the stroke with it.
		`<svg><path class="a" d="M0 0"/><path d="M0 0" class="b"/><path class="c"/><path/><text class="d">e</text></svg>`: `<svg><path class=a d="M0 0"/><path d="M0 0" class="b"/><path class="c"/><path/><text class=d>e</text></svg>`,
		`<dl class="keys"></dl>`: `<dl class="keys"></dl>`,
	} {
		files := pages()
		files[0].Bytes = []byte(strings.Replace(string(files[0].Bytes), `<h1>U</h1>`, `<h1>U</h1>`+inside, 1))
		bound, err := Single(files)
		if err != nil {
			t.Fatal(err)
		}
		_, after, _ := strings.Cut(string(bound), `<h1>U</h1>`)
		if !strings.HasPrefix(after, want) {
			t.Errorf("%s is bound as\n%.*s", inside, len(want)+40, after)
		}
	}
}
