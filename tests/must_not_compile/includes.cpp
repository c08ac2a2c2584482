// Compiles where the header can be seen.
#include HEADER
