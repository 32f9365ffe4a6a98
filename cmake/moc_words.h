// Read by moc before each header. moc leaves the standard library's configuration out, and then
// stumbles over the words in which its headers open their namespaces.
#define _GLIBCXX_VISIBILITY(V)
#define _GLIBCXX_BEGIN_NAMESPACE_VERSION
#define _GLIBCXX_END_NAMESPACE_VERSION
