// The floor of start-up: nothing but the shared libraries that wattfall is linked to.
int main() {
  return 0;
}
