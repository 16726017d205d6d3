module noonbook/testdata/faults

go 1.26.8
