package typeset

import (
	"bytes"
	"html/template"
	"testing"

	"noonbook/build/say"
)

// The lists of the reference are what a template would write of them.
func TestKeyListsAreThoseOfATemplate(t *testing.T) {
	words, err := Language("en", false)
	if err != nil {
		t.Fatal(err)
	}
	slow := template.Must(template.New("lists").Funcs(template.FuncMap{
		"sample": markSamples,
		"missing": func(k Key) string {
			return words.Say("reference.missing", say.Text(k.Allowed), say.Text(k.Default))
		},
	}).Parse(`{{define "keys"}}<dl class="keys">
{{range .}}<dt>{{.Name}}</dt><dd>{{sample .Doc}} <small>{{sample (missing .)}}</small></dd>
{{end}}</dl>
{{end}}{{define "facts"}}<dl class="keys">
{{range .}}<dt>{{.Name}}</dt><dd>{{sample .Doc}}{{if .Unit}} <small>{{.Unit}}</small>{{end}}</dd>
{{end}}</dl>
{{end}}`))
	odd := `a<b & "A4", date = "next full Moon" <i>'x'</i>`
	keys := []Key{{"paper", `"A4" or "Letter"`, `"A4"`, "The paper."}, {odd, odd, odd, odd}}
	facts := []Fact{{"noon", "", "When the Sun is highest."}, {odd, "<deg> & 'min'", odd}}
	for name, list := range map[string]struct {
		got  template.HTML
		data any
	}{"keys": {words.keyList(keys), keys}, "facts": {factList(facts), facts}} {
		var want bytes.Buffer
		if err := slow.ExecuteTemplate(&want, name, list.data); err != nil {
			t.Fatal(err)
		}
		if string(list.got) != want.String() {
			t.Errorf("%s are\n%s\nand a template writes\n%s", name, list.got, &want)
		}
	}
}
