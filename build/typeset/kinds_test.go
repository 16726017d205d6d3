package typeset_test

import (
	"bytes"
	"html/template"
	"io/fs"
	"reflect"
	"slices"
	"strings"
	"testing"

	"noonbook/build/typeset"
	"noonbook/theme"
)

// filled puts something in every field but the words: a template that asks for what
// its data does not hold then fails, whatever it makes depend on what.
func filled(v reflect.Value) {
	switch v.Kind() {
	case reflect.String:
		v.SetString("x")
	case reflect.Bool:
		v.SetBool(true)
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 1, 1))
		filled(v.Index(0))
	case reflect.Pointer:
		if v.Type() == reflect.TypeFor[*typeset.Words]() {
			return
		}
		v.Set(reflect.New(v.Type().Elem()))
		filled(v.Elem())
	case reflect.Struct:
		for i := range v.NumField() {
			filled(v.Field(i))
		}
	}
}

func TestEveryKindOfPageShowsItsData(t *testing.T) {
	w := words(t, false)
	templates, err := typeset.Templates(w)
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range typeset.Kinds() {
		for _, full := range []bool{false, true} {
			page := reflect.New(reflect.TypeOf(k.Data)).Elem()
			if full {
				filled(page)
			}
			page.FieldByName("Shell").FieldByName("Words").Set(reflect.ValueOf(w))
			page.FieldByName("Shell").FieldByName("Title").SetString("The title")
			var out bytes.Buffer
			if err := typeset.Write(&out, templates, page.Interface()); err != nil {
				t.Errorf("%s: %v", k.Template, err)
			} else if !strings.HasPrefix(strings.TrimSpace(out.String()), "<!doctype html>") || !strings.Contains(out.String(), "<title>The title") {
				t.Errorf("%s is no page with its title:\n%s", k.Template, out.String())
			}
		}
	}
	if err := typeset.Write(&bytes.Buffer{}, template.New(""), typeset.Link{}); err == nil {
		t.Error("a link is written as a page")
	}
}

// What lies in theme is used: each template is that of a kind of page or holds the
// parts that they share, each file of styles belongs to every page or to a kind.
func TestEveryFileOfTheThemeIsUsed(t *testing.T) {
	var pages []string
	kinds := map[reflect.Type]string{}
	for _, k := range typeset.Kinds() {
		pages = append(pages, k.Template)
		kind := reflect.TypeOf(k.Data)
		if other := kinds[kind]; other != "" {
			t.Errorf("%s and %s show the same type %s", other, k.Template, kind)
		}
		kinds[kind] = k.Template
	}
	pages = append(pages, "parts.html", "bound.html", "form.html", "district.html")
	slices.Sort(pages)
	if files := names(t, "templates"); !slices.Equal(files, pages) {
		t.Errorf("the theme has the templates %v, kinds and parts are %v", files, pages)
	}
	css := string(typeset.Style()) + strings.TrimPrefix(string(typeset.FormStyle()), formBefore(t))
	_, own, _ := strings.Cut(string(typeset.DistrictStyle()), "/* The page of a board")
	css += "/* The page of a board" + own
	for _, name := range names(t, "styles") {
		part, err := fs.ReadFile(theme.Files(), "styles/"+name)
		if err != nil {
			t.Fatal(err)
		}
		if n := strings.Count(css, string(part)); n != 1 {
			t.Errorf("%s is in the style sheet %d times", name, n)
		}
	}
}

// formBefore is the style that the pages to type on share with all others.
func formBefore(t *testing.T) string {
	t.Helper()
	part, err := fs.ReadFile(theme.Files(), "styles/page.css")
	if err != nil || !strings.HasPrefix(string(typeset.FormStyle()), string(part)) {
		t.Fatalf("the pages to type on do not begin with the style of all pages: %v", err)
	}
	return string(part)
}

func names(t *testing.T, folder string) []string {
	t.Helper()
	entries, err := fs.ReadDir(theme.Files(), folder)
	if err != nil {
		t.Fatal(err)
	}
	var list []string
	for _, e := range entries {
		list = append(list, e.Name())
	}
	return list
}
