// Ends a test run with one line that a machine can read: "N passed, N failed".
export default class CountsReporter {
    onTestRunEnd(modules, unhandledErrors) {
        let passed = 0;
        let failed = unhandledErrors.length;
        for (const module of modules) {
            // A file that does not load, and a hook that throws, leave no failed test behind: they count as one.
            failed += module.errors().length;
            for (const suite of module.children.allSuites()) {
                failed += suite.errors().length;
            }
            for (const test of module.children.allTests()) {
                const { state } = test.result();
                passed += state === 'passed' ? 1 : 0;
                failed += state === 'failed' ? 1 : 0;
            }
        }
        process.once('exit', () => console.log(`${passed} passed, ${failed} failed`));
    }
}
