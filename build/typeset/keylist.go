package typeset

import (
	"html/template"

	"noonbook/build/say"
)

// The reference has more than a thousand keys and facts. Their lists are appended here: a
// template takes many times as long for each.

// keyList writes keys as a list, each with what holds where it is missing.
func (w *Words) keyList(keys []Key) template.HTML {
	dst := []byte(openList)
	for _, k := range keys {
		dst = appendNamed(dst, k.Name, k.Doc)
		dst = append(dst, " <small>"...)
		dst = appendSamples(dst, w.Say("reference.missing", say.Text(k.Allowed), say.Text(k.Default)))
		dst = append(dst, "</small></dd>\n"...)
	}
	return template.HTML(append(dst, closeList...))
}

// factList writes facts as a list, each with its unit if it has one.
func factList(facts []Fact) template.HTML {
	dst := []byte(openList)
	for _, f := range facts {
		dst = appendNamed(dst, f.Name, f.Doc)
		if f.Unit != "" {
			dst = append(dst, " <small>"...)
			dst = append(dst, template.HTMLEscapeString(f.Unit)...)
			dst = append(dst, "</small>"...)
		}
		dst = append(dst, "</dd>\n"...)
	}
	return template.HTML(append(dst, closeList...))
}

const openList, closeList = "<dl class=\"keys\">\n", "</dl>\n"

func appendNamed(dst []byte, name, doc string) []byte {
	dst = append(dst, "<dt>"...)
	dst = append(dst, template.HTMLEscapeString(name)...)
	dst = append(dst, "</dt><dd>"...)
	return appendSamples(dst, doc)
}
