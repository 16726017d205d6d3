package source_test

import (
	"strings"
	"testing"

	"github.com/yuin/goldmark/ast"

	"noonbook/build/source"
)

// What is meant as an answer, a note for staff or a caution and is not one is a
// fault, never words for the class. Each text stands below the lesson block, from
// line 4; SECRET is what the class must not see.
func TestNearFences(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"a comma after the word", "```answer,lines=3\nSECRET\n```\n", `u/a.md:4:4: "answer,lines=3" is an unknown block; write a space after "answer"`},
		{"braces after the word", "```answer{lines=3}\nSECRET\n```\n", `u/a.md:4:4: "answer{lines=3}" is an unknown block; write a space after "answer"`},
		{"a colon after the word", "```answer:\nSECRET\n```\n", `u/a.md:4:4: "answer:" is an unknown block; write a space after "answer"`},
		{"brackets", "```[answer]\nSECRET\n```\n", `u/a.md:4:4: "[answer]" is an unknown block; did you mean "answer"?`},
		{"a brace and a dot", "```{.answer}\nSECRET\n```\n", `u/a.md:4:4: "{.answer}" is an unknown block; did you mean "answer"?`},
		{"a capital", "```Answer\nSECRET\n```\n", `u/a.md:4:4: "Answer" is an unknown block; did you mean "answer"?`},
		{"a slip", "```anwser lines=3\nSECRET\n```\n", `u/a.md:4:4: "anwser" is an unknown block; did you mean "answer"?`},
		{"the plural", "```answers\nSECRET\n```\n", `u/a.md:4:4: "answers" is an unknown block; did you mean "answer"?`},
		{"solution", "~~~solution\nSECRET\n~~~\n", `u/a.md:4:4: "solution" is an unknown block; did you mean "answer"?`},
		{"French", "```réponse\nSECRET\n```\n", `u/a.md:4:4: "réponse" is an unknown block; did you mean "answer"?`},
		{"teacher", "```teacher\nSECRET\n```\n", `u/a.md:4:4: "teacher" is an unknown block; did you mean "staff"?`},
		{"staff-note", "```staff-note\nSECRET\n```\n", `u/a.md:4:4: "staff-note" is an unknown block; did you mean "staff"?`},
		{"staff with a dash", "```staff—only\nSECRET\n```\n", `u/a.md:4:4: "staff—only" is an unknown block; write a space after "staff"`},
		{"attention", "```attention\nDo not look at the Sun.\n```\n", `u/a.md:4:4: "attention" is an unknown block; did you mean "caution"?`},
		{"warning", "```warning\nDo not look at the Sun.\n```\n", `u/a.md:4:4: "warning" is an unknown block; did you mean "caution"?`},
		{"a word that nobody knows", "```xylophone\nSECRET\n```\n", `u/a.md:4:4: "xylophone" is an unknown block; want compute, caution, answer, staff, only, unless, or for words shown as they stand text, csv, toml, markdown, html, css, javascript, json, python, sh`},
		{"a sign that nobody sees", "```\u200banswer\nSECRET\n```\n", "u/a.md:4:4: \"\\u200banswer\" is an unknown block; did you mean \"answer\"?"},

		{"two backticks", "``answer lines=3\nSECRET\n``\n", "u/a.md:4:1: ``answer begins no block; a block begins and ends with a line of three backticks, ```"},
		{"one backtick", "`answer\nSECRET\n`\n", "u/a.md:4:1: `answer begins no block"},
		{"two tildes", "~~staff\nSECRET\n~~\n", "u/a.md:4:1: ~~staff begins no block"},
		{"typographic quotes", "’’’answer lines=3\nSECRET\n’’’\n", "u/a.md:4:1: ’’’ begins no block"},
		{"other typographic quotes", "‘‘‘answer\nSECRET\n‘‘‘\n", "u/a.md:4:1: ‘‘‘ begins no block"},
		{"acute accents", "´´´answer\nSECRET\n´´´\n", "u/a.md:4:1: ´´´ begins no block"},
		{"straight quotes", "'''answer\nSECRET\n'''\n", "u/a.md:4:1: ''' begins no block"},
		{"double quotes", "\"\"\"answer\nSECRET\n\"\"\"\n", "u/a.md:4:1: \"\"\" begins no block"},
		{"a mixture", "`´`answer\nSECRET\n```\n", "u/a.md:4:1: `´` begins no block"},
		{"colons", ":::answer\nSECRET\n:::\n", "u/a.md:4:1: ::: begins no block"},
		{"colons and a space", "::: staff\nSECRET\n:::\n", "u/a.md:4:1: ::: begins no block"},
		{"wide backticks", "｀｀｀answer\nSECRET\n｀｀｀\n", "u/a.md:4:1: ｀｀｀ begins no block"},
		{"backticks that a program escaped", "\\`\\`\\`answer\nSECRET\n\\`\\`\\`\n", "u/a.md:4:1: \\`\\`\\` begins no block"},
		{"a no-break space before", "\u00a0```answer\nSECRET\n\u00a0```\n", "u/a.md:4:3: ``` is indented too far to begin or end a block"},
		{"four spaces before", "x\n\n    ```answer\n    SECRET\n    ```\n", "u/a.md:6:5: ``` is indented too far to begin or end a block"},
		{"a tab before", "x\n\n\t```answer\n\tSECRET\n\t```\n", "u/a.md:6:2: ``` is indented too far to begin or end a block"},
		{"four too far in a list", "1. One\n\n       ```answer lines=2\n       SECRET\n       ```\n", "u/a.md:6:8: ``` is indented too far to begin or end a block"},
		{"four too far in a quote", "> x\n>\n>     ```answer\n>     SECRET\n>     ```\n", "u/a.md:6:7: ``` is indented too far to begin or end a block"},
		{"a fence in a line", "How high? ```answer 42 SECRET```\n", "u/a.md:4:11: a block begins on a line of its own"},
		{"a block on one line", "```answer 42 SECRET```\n", "u/a.md:4:1: a block cannot stand on one line"},
		{"no fence at all", "answer lines=3\n\nSECRET\n", "u/a.md:4:1: answer lines=3 begins no block without its fence"},
		{"another word in the same line", "```answer staff\nSECRET\n```\n", `u/a.md:4:11: answer: "staff" is not understood`},

		{"as many backticks as its container", "```answer\nx\n\n```compute sun-day\n```\n\nSECRET\n```\n", "u/a.md:7:1: the block begins with ```, and so does the block of line 4 that it stands in, which its end would end; begin and end that one with ````"},
		{"more backticks than its container", "```staff\nx\n\n````text\n````\n\nSECRET\n```\n", "u/a.md:7:1: the block begins with ````, and so does the block of line 4"},
		{"a caution as long as its answer", "~~~answer\nx\n\n~~~caution\ny\n~~~\n\nSECRET\n~~~\n", "u/a.md:7:1: the caution block begins with ~~~"},
		{"code that is not closed before", "```text\nx\n\n```answer\nSECRET\n```\n", "u/a.md:7:1: ```answer stands in the block of line 4, which is not closed before it"},
		{"a fence too many before", "```answer\nx\n```\n```\n\n```answer\nSECRET\n```\n", "u/a.md:9:1: ```answer stands in the block of line 7"},
		{"a block never closed", "```answer\nSECRET\n", "u/a.md:4:1: the answer block is never closed; end it with a line of ```"},
		{"code never closed", "````text\nx\n```\n", "u/a.md:4:1: the block is never closed; end it with a line of ````"},
		{"closed by another sign", "```answer\nx\n~~~\n\nSECRET\n", "u/a.md:4:1: the answer block is never closed"},
		{"left by its quote", "> ```answer\nSECRET\n> ```\n", "u/a.md:4:3: the answer block is never closed"},
		{"left by its list", "- ```answer\nSECRET\n  ```\n", "u/a.md:4:3: the answer block is never closed"},
	} {
		_, problems := unitOf(t, map[string]string{"a.md": head + c.text})
		if problems.Faults() == 0 || !strings.HasPrefix(problems[0].Error(), c.want) {
			t.Errorf("%s: got %v, want %s", c.name, problems, c.want)
		}
	}
	_, problems := unitOf(t, map[string]string{"a.md": strings.Replace(head, "\n```", "", 1) + "SECRET\n"})
	if want := "u/a.md:1:1: the lesson block is never closed; end it with a line of ```"; len(problems) != 1 || problems[0].Error() != want {
		t.Errorf("a lesson block that is never closed: %v", problems)
	}
}

// What may be written near a fence without being one.
func TestSoundFences(t *testing.T) {
	for name, text := range map[string]string{
		"a tab after the word":       "```answer\tlines=3\nSECRET\n```\n",
		"spaces round the word":      "```  staff  \nSECRET\n```\n",
		"a no-break space":           "```\u00a0answer\nSECRET\n```\n",
		"no empty line before":       "x\n```staff\nSECRET\n```\ny\n",
		"three spaces before":        "   ~~~answer\n   SECRET\n   ~~~\n",
		"in a list":                  "1. One\n\n   ```answer lines=2\n   SECRET\n   ```\n",
		"in a quote":                 "> ```staff\n> SECRET\n> ```\n",
		"tildes within backticks":    "```answer\nSECRET\n\n~~~text\nx\n~~~\n```\n",
		"fewer within more":          "`````staff\n````answer\n```caution\nSECRET\n```\n````\n`````\n",
		"an example of a block":      "````text\n```answer\nx\n```\n````\n",
		"tildes round an example":    "~~~text\n```answer\nx\n```\n~~~\n",
		"words between ticks":        "`answer` and ``staff`` and '''x\n",
		"words in quotes":            "\"Answer the question\", she said.\n\n'Caution' is a word.\n",
		"a word at the beginning":    "answer these three\n\nStaff at the door\n",
		"code within code":           "````text\n```\nx\n```\n````\n",
		"a list that nobody fenced":  "- answer the question\n- caution the class\n",
		"a quotation of a quotation": "“‘Answer me!’ she said.”\n",
	} {
		unit, problems := unitOf(t, map[string]string{"a.md": head + text})
		if name == "words between ticks" {
			if problems.Faults() != 0 {
				t.Errorf("%s: %v", name, problems)
			}
			continue
		}
		if len(problems) > 0 {
			t.Errorf("%s: %v", name, problems)
		}
		if strings.Contains(text, "SECRET") && !hidden(unit.Lessons[0]) {
			t.Errorf("%s: the class would see it", name)
		}
	}
}

// hidden reports whether SECRET stands in an answer or a staff block.
func hidden(l *source.Lesson) bool {
	found := false
	_ = ast.Walk(l.Tree, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		text, ok := n.(*ast.Text)
		if !ok || !entering || string(text.Segment.Value(l.Source)) != "SECRET" {
			return ast.WalkContinue, nil
		}
		for p := n.Parent(); p != nil; p = p.Parent() {
			if aside, ok := p.(*source.Aside); ok && aside.Word != source.Caution {
				found = true
			}
		}
		return ast.WalkContinue, nil
	})
	return found
}
