package placeholder

import (
	"noonbook/build/form"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/classroom"
)

func classFacts() Entry {
	return Entry{
		Name:     "class-facts",
		Summary:  "How many pupils there are and how they form groups.",
		Settings: []string{"school.name", "class.pupils", "class.group_size"},
		Facts: []Fact{
			{"school", "", "name of the school"},
			{"pupils", "", "number of pupils"},
			{"groups", "", "number of groups; their sizes differ by at most one"},
			{"group_size", "", "pupils in the largest group"},
		},
		Sources: []string{"unit.toml of the school"},
		Reckon: func(v form.Values) (result.Result, error) {
			groups := classroom.Groups(v.Whole("class.pupils"), v.Whole("class.group_size"))
			largest := 0
			if len(groups) > 0 {
				largest = groups[0]
			}
			return result.Result{Facts: []result.Fact{
				{Name: "school", Value: say.Text(v.Text("school.name"))},
				{Name: "pupils", Value: say.Count(v.Whole("class.pupils"))},
				{Name: "groups", Value: say.Count(len(groups))},
				{Name: "group_size", Value: say.Count(largest)},
			}}, nil
		},
	}
}
